package org.evenpour.command;

import java.util.Locale;
import org.evenpour.view.model.Language;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** In which language people are told: the window in the system's, files and console in English. */
final class LanguageOption {
  @Option(names = "--language", paramLabel = "L", description = "en or es")
  private @Nullable String language;

  /** As it was asked for; null where it was not. */
  @Nullable Language asked(CommandSpec spec) {
    String wanted = language;
    if (wanted == null) {
      return null;
    }
    if (!Language.TAGS.contains(wanted)) {
      throw new ParameterException(
          spec.commandLine(), "--language: '" + wanted + "' is not known; use en or es");
    }
    return Language.of(wanted);
  }

  /** That of the system, where it is one of ours. */
  static Language ofSystem() {
    return Language.of(Locale.getDefault().getLanguage());
  }
}
