package org.evenpour.command;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Times as they are typed after {@code --from} and {@code --to}. */
final class Period {
  private Period() {}

  /** A time with an offset, a time in the wheel's zone, or a day's beginning there. */
  static Instant instant(CommandSpec spec, String option, String text, ZoneId zone) {
    String iso = text.strip().replaceFirst("^(\\S+) (\\S+)$", "$1T$2");
    List<Function<String, Instant>> forms =
        List.of(
            t -> OffsetDateTime.parse(t).toInstant(),
            t -> LocalDateTime.parse(t).atZone(zone).toInstant(),
            t -> LocalDate.parse(t).atStartOfDay(zone).toInstant());
    for (Function<String, Instant> form : forms) {
      Instant at = tried(form, iso);
      if (at != null) {
        return at;
      }
    }
    throw new ParameterException(
        spec.commandLine(),
        option + ": '" + text + "' is no time; write it as 2026-03-02T06:00 or 2026-03-02");
  }

  private static @Nullable Instant tried(Function<String, Instant> form, String text) {
    try {
      return form.apply(text);
    } catch (DateTimeException e) {
      return null; // another form may fit
    }
  }
}
