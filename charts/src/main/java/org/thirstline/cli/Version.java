package org.thirstline.cli;

import picocli.CommandLine.IVersionProvider;

/** Versions of the program and of what it runs on. */
final class Version implements IVersionProvider {

    /** Returns the program's version, "development" outside a packaged jar. */
    static String program() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }

    /** Returns the version of the Java runtime. */
    static String java() {
        return Runtime.version().toString();
    }

    @Override
    public String[] getVersion() {
        return new String[] {"thirstline " + program(), "Java " + java()};
    }
}
