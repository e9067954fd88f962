package org.evenpour.command;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/**
 * One call of the program, as typed.
 *
 * @param status exit status
 * @param out what stood on standard output
 * @param err what stood on standard error
 */
record CommandLineCall(int status, String out, String err) {
  static CommandLineCall of(Object... arguments) {
    String[] typed = new String[arguments.length];
    for (int i = 0; i < typed.length; i++) {
      typed[i] = arguments[i].toString();
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = Main.run(out, err, typed);
    return new CommandLineCall(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
