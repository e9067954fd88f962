package org.evenpour.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.TypeConversionException;

/** Reads what is typed behind options, and refuses what could only be a slip. */
final class Arguments {
  private Arguments() {}

  static Path path(String typed) {
    if (typed.isBlank()) {
      throw new TypeConversionException("it is empty, and should name a file or a folder");
    }
    try {
      return Path.of(typed);
    } catch (InvalidPathException e) {
      throw new TypeConversionException("'" + typed + "' is no name of a file");
    }
  }

  static double number(String typed) {
    double number;
    try {
      number = Double.parseDouble(typed.strip());
    } catch (NumberFormatException e) {
      throw new TypeConversionException("'" + typed + "' is no number");
    }
    if (!Double.isFinite(number)) {
      throw new TypeConversionException("'" + typed + "' is no number that can be reckoned with");
    }
    return number;
  }
}
