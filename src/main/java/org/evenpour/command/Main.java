package org.evenpour.command;

/** The program's entry point. */
public final class Main {
  private Main() {}

  /**
   * Runs one command.
   *
   * @param arguments as typed
   */
  public static void main(String[] arguments) {
    System.exit(0);
  }
}
