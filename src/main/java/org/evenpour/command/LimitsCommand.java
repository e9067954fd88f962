package org.evenpour.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.casting.CharacteristicProfile;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsVersion;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.report.LimitsText;
import org.evenpour.store.LimitsFile;
import org.evenpour.store.SigningKey;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code evenpour limits}: proposes, approves and retires the limits that audits judge by. */
@Command(
    name = "limits",
    description = {
      "Limits with a life: proposed from a base period, approved by a person, retired by a person.",
      "Approved limits stand in a file beside the profile, and audit and board judge by them."
    },
    subcommands = {
      LimitsCommand.Propose.class,
      LimitsCommand.Approve.class,
      LimitsCommand.Show.class,
      LimitsCommand.Compare.class,
      LimitsCommand.Retire.class,
      LimitsCommand.Specify.class,
      LimitsCommand.Key.class
    },
    mixinStandardHelpOptions = true)
final class LimitsCommand implements Runnable {
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public void run() {
    throw new ParameterException(
        spec.commandLine(), "say what: propose, approve, list, compare, retire, specify or key");
  }

  /** Warns of a line that was cut off, and gives what stands in the file. */
  private static LimitsBook book(CommandSpec spec, LimitsFile file) throws IOException {
    LimitsFile.Contents contents = file.read();
    LogsToAudit.warn(spec, contents.warning());
    return contents.book();
  }

  /** {@code evenpour limits propose}. */
  @Command(
      name = "propose",
      description = "Prints the limits that a base period gives; approves nothing.",
      mixinStandardHelpOptions = true)
  static final class Propose implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsBase base = new LimitsBase();

    @Override
    public Integer call() throws IntakeException, IOException {
      LimitsBase.Outcome outcome = base.outcome(spec);
      LimitsText text = new LimitsText(outcome.zone());
      if (outcome.drafts().isEmpty()) {
        return outcome.nothing(spec, text, "nothing can be proposed");
      }
      PrintWriter screen = spec.commandLine().getOut();
      for (ProposedLimits one : outcome.proposed()) {
        screen.print(text.proposal(one, outcome.judged()));
      }
      screen.flush();
      return Main.DONE;
    }
  }

  /** {@code evenpour limits approve}. */
  @Command(
      name = "approve",
      description = {
        "Approves the limits that a base period gives: audit and board judge by them from then on.",
        "Look at them with propose first; the arguments are the same."
      },
      mixinStandardHelpOptions = true)
  static final class Approve implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsBase base = new LimitsBase();

    @Mixin private Signed signed = new Signed();

    @Option(
        names = "--valid-from",
        paramLabel = "T",
        description = "turns that begin at T or later are judged by them; default: now")
    private @Nullable String validFrom;

    @Override
    public Integer call() throws IntakeException, IOException {
      String name = signed.who(spec);
      String reason = signed.why(spec);
      LimitsBase.Outcome outcome = base.outcome(spec);
      Instant at = Signed.now();
      Instant from =
          validFrom == null ? at : Period.instant(spec, "--valid-from", validFrom, outcome.zone());
      List<LimitsVersion> drafts =
          outcome.drafts().stream().map(one -> one.approved(from, at, name, reason)).toList();
      LimitsText text = new LimitsText(outcome.zone());
      if (drafts.isEmpty()) {
        return outcome.nothing(spec, text, "nothing was approved");
      }
      LimitsFile file = new LimitsFile(base.file(spec).path(), signed.key());
      book(spec, file);
      PrintWriter screen = spec.commandLine().getOut();
      for (LimitsVersion one : file.approve(drafts)) {
        screen.print(text.approved(one));
      }
      for (ProposedLimits one : outcome.proposed()) {
        if (one.draft() == null) {
          screen.print(text.proposal(one, outcome.judged()));
        }
      }
      screen.println("approved by " + name + " in " + file.path());
      if (validFrom == null) {
        screen.println("what was cast before now is not judged by them; --valid-from changes that");
      }
      screen.flush();
      return Main.DONE;
    }
  }

  /** {@code evenpour limits list}. */
  @Command(
      name = "list",
      description = {
        "Lists what was approved, retired and specified, and checks that nothing was tampered with.",
        "Keep the last line's hash elsewhere: only so can it be seen that lines were taken away."
      },
      mixinStandardHelpOptions = true)
  static final class Show implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsPlace place = new LimitsPlace();

    @Option(names = "--log", paramLabel = "LOG", description = "the log beside which they stand")
    private @Nullable Path log;

    @Mixin private Checked checked = new Checked();

    @Option(names = "--at", paramLabel = "T", description = "which are in force at T; default: now")
    private @Nullable String at;

    @Override
    public Integer call() throws IntakeException, IOException {
      ZoneId zone = place.profiles().zone();
      LimitsFile file = place.existing(spec, log);
      LimitsBook book = book(spec, file);
      checked.check(file.lines());
      Instant time = at == null ? Signed.now() : Period.instant(spec, "--at", at, zone);
      spec.commandLine().getOut().print(new LimitsText(zone).list(book, time));
      spec.commandLine().getOut().print(Checked.said(file.path(), file.lines().head()));
      spec.commandLine().getOut().flush();
      return Main.DONE;
    }
  }

  /** {@code evenpour limits key}. */
  @Command(
      name = "key",
      description = {
        "Makes a key to sign with: F, for its owner's eyes, and F.pub, for whoever checks.",
        "approve, retire, specify and causes mark sign by --key F; list checks by --signers F.pub."
      },
      mixinStandardHelpOptions = true)
  static final class Key implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();

    @Parameters(index = "0", paramLabel = "F", description = "file of the key, to be made")
    private Path file = Path.of("");

    @Override
    public Integer call() throws IOException {
      Path open = SigningKey.make(file);
      spec.commandLine().getOut().println("wrote " + file + ", for you alone, and " + open);
      return Main.DONE;
    }
  }

  /** Versions of that number. */
  private static List<LimitsVersion> numbered(
      CommandSpec spec,
      LimitsBook book,
      int number,
      @Nullable String wheel,
      @Nullable String characteristic) {
    List<LimitsVersion> all =
        book.versions().stream()
            .filter(one -> one.version() == number)
            .filter(one -> wheel == null || wheel.equals(one.wheel()))
            .filter(one -> characteristic == null || characteristic.equals(one.characteristic()))
            .toList();
    if (all.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "there is no version " + number + "; list shows what there is");
    }
    return all;
  }

  /** {@code evenpour limits compare}. */
  @Command(
      name = "compare",
      description = "Says what differs between two versions.",
      mixinStandardHelpOptions = true)
  static final class Compare implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsPlace place = new LimitsPlace();

    @Parameters(index = "0", paramLabel = "N", description = "a version's number")
    private int one;

    @Parameters(index = "1", paramLabel = "M", description = "another's")
    private int other;

    @Option(names = "--log", paramLabel = "LOG", description = "the log beside which they stand")
    private @Nullable Path log;

    @Option(names = "--wheel", paramLabel = "W", description = "only this wheel")
    private @Nullable String wheel;

    @Option(names = "--characteristic", paramLabel = "C", description = "only this one")
    private @Nullable String characteristic;

    @Override
    public Integer call() throws IntakeException, IOException {
      LimitsText text = new LimitsText(place.profiles().zone());
      LimitsBook book = book(spec, place.existing(spec, log));
      List<LimitsVersion> others = numbered(spec, book, other, wheel, characteristic);
      StringBuilder all = new StringBuilder();
      for (LimitsVersion a : numbered(spec, book, one, wheel, characteristic)) {
        for (LimitsVersion b : others) {
          if (b.isOf(a.wheel(), a.characteristic())) {
            all.append(text.comparison(a, b));
          }
        }
      }
      if (all.isEmpty()) {
        throw new ParameterException(
            spec.commandLine(), "nothing has both versions; list shows what there is");
      }
      spec.commandLine().getOut().print(all);
      spec.commandLine().getOut().flush();
      return Main.DONE;
    }
  }

  /** {@code evenpour limits retire}. */
  @Command(
      name = "retire",
      description = {
        "Retires a version: turns from then on are not judged by it.",
        "The version before it is in force again, unless that is retired too."
      },
      mixinStandardHelpOptions = true)
  static final class Retire implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsPlace place = new LimitsPlace();

    @Parameters(index = "0", paramLabel = "N", description = "the version's number")
    private int number;

    @Mixin private Signed signed = new Signed();

    @Option(
        names = "--from",
        paramLabel = "T",
        description = "turns that begin at T or later are not judged by it; default: now")
    private @Nullable String from;

    @Option(names = "--log", paramLabel = "LOG", description = "the log beside which they stand")
    private @Nullable Path log;

    @Option(
        names = "--wheel",
        paramLabel = "W",
        description = "which wheel; needed where several have this version")
    private @Nullable String wheel;

    @Option(
        names = "--characteristic",
        paramLabel = "C",
        description = "only this one; default: all that have this version")
    private @Nullable String characteristic;

    @Override
    public Integer call() throws IntakeException, IOException {
      String name = signed.who(spec);
      String reason = signed.why(spec);
      ZoneId zone = place.profiles().zone();
      Instant at = Signed.now();
      Instant end = from == null ? at : Period.instant(spec, "--from", from, zone);
      LimitsFile file = new LimitsFile(place.existing(spec, log).path(), signed.key());
      List<LimitsVersion> all = numbered(spec, book(spec, file), number, wheel, characteristic);
      Set<String> wheels = new LinkedHashSet<>();
      all.forEach(one -> wheels.add(one.wheel()));
      if (wheels.size() > 1) {
        throw new ParameterException(
            spec.commandLine(),
            "wheels " + String.join(", ", wheels) + " have a version " + number + "; say --wheel");
      }
      List<Retirement> retirements = new ArrayList<>();
      for (LimitsVersion one : all) {
        retirements.add(
            new Retirement(
                one.wheel(), one.characteristic(), one.version(), end, at, name, reason));
      }
      file.retire(retirements);
      PrintWriter screen = spec.commandLine().getOut();
      LimitsBook book = file.read().book();
      for (LimitsVersion one : all) {
        LimitsVersion left = book.inForce(one.wheel(), one.characteristic(), end);
        screen.println(
            "retired "
                + one.characteristic()
                + " version "
                + one.version()
                + "; "
                + (left == null
                    ? "from then on none is in force, and limits are proposed again"
                    : "from then on version " + left.version() + " is in force"));
      }
      screen.flush();
      return Main.DONE;
    }
  }

  /** {@code evenpour limits specify}. */
  @Command(
      name = "specify",
      description = {
        "Dates a specification: anodes cast from then on are judged by it, those before are not.",
        "Figures are in the profile's unit of that characteristic, or in kg and mm."
      },
      mixinStandardHelpOptions = true)
  static final class Specify implements Callable<Integer> {
    @Spec private CommandSpec spec = CommandSpec.create();
    @Mixin private LimitsPlace place = new LimitsPlace();

    @Option(
        names = "--characteristic",
        required = true,
        paramLabel = "C",
        description = "mass, thickness, wedge or mass_deviation")
    private String characteristic = "";

    @Option(names = "--lower", paramLabel = "X", description = "smallest accepted value")
    private @Nullable Double lower;

    @Option(names = "--target", paramLabel = "X", description = "wanted value")
    private @Nullable Double target;

    @Option(names = "--upper", paramLabel = "X", description = "largest accepted value")
    private @Nullable Double upper;

    @Option(names = "--from", required = true, paramLabel = "T", description = "from when")
    private String from = "";

    @Option(names = "--wheel", paramLabel = "W", description = "only this wheel; default: every")
    private @Nullable String wheel;

    @Mixin private Signed signed = new Signed();

    @Option(names = "--log", paramLabel = "LOG", description = "the log beside which they stand")
    private @Nullable Path log;

    @Override
    public Integer call() throws IntakeException, IOException {
      Profiles profiles = place.profiles();
      ZoneId zone = profiles.zone();
      if (!Quantity.ALL.contains(characteristic)) {
        throw new ParameterException(
            spec.commandLine(),
            "--characteristic: '"
                + characteristic
                + "' is not known; use mass, thickness, wedge or mass_deviation");
      }
      Double least = lower;
      Double wanted = target;
      Double most = upper;
      boolean isInOrder = isBelow(least, wanted) && isBelow(wanted, most) && isBelow(least, most);
      if (least == null && most == null || !isInOrder || !areNumbers(least, wanted, most)) {
        throw new ParameterException(
            spec.commandLine(),
            "give --lower or --upper or both, with --target between them, in rising order");
      }
      Unit unit = unit(profiles);
      SpecificationRevision revision =
          new SpecificationRevision(
              wheel,
              characteristic,
              new Specification(
                  computed(unit, least), computed(unit, wanted), computed(unit, most)),
              unit.canonicalUnit().suffix(),
              Period.instant(spec, "--from", from, zone),
              Signed.now(),
              signed.who(spec),
              signed.why(spec));
      LimitsFile file = new LimitsFile(place.file(spec, log).path(), signed.key());
      file.specify(revision);
      PrintWriter screen = spec.commandLine().getOut();
      screen.print(new LimitsText(zone).specified(revision));
      screen.println("written to " + file.path());
      screen.flush();
      return Main.DONE;
    }

    private Unit unit(Profiles profiles) {
      CharacteristicProfile its =
          profiles
              .forWheel(
                  wheel != null
                      ? wheel
                      : profiles.wheels().isEmpty()
                          ? ""
                          : java.util.Objects.requireNonNullElse(
                              profiles.wheels().get(0).wheel(), ""))
              .characteristics()
              .get(characteristic);
      return its != null
          ? its.unit()
          : characteristic.startsWith(Quantity.MASS) ? Unit.KG : Unit.MM;
    }

    private static boolean isBelow(@Nullable Double a, @Nullable Double b) {
      return a == null || b == null || a < b;
    }

    private static boolean areNumbers(@Nullable Double... values) {
      for (Double value : values) {
        if (value != null && !Double.isFinite(value)) {
          return false;
        }
      }
      return true;
    }

    private static @Nullable Double computed(Unit unit, @Nullable Double value) {
      return value == null ? null : (Double) unit.toCanonical(value);
    }
  }
}
