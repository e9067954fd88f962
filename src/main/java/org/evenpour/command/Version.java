package org.evenpour.command;

import picocli.CommandLine.IVersionProvider;

/** The version as the build wrote it into the jar. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String version = Version.class.getPackage().getImplementationVersion();
    return new String[] {"evenpour " + (version == null ? "(not built)" : version)};
  }
}
