package org.thirstline.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.thirstline.io.study.NewStudy;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a commented study to start from. */
@Command(
        name = "new",
        description = "Write a commented study to start from. Nothing that exists is overwritten.",
        mixinStandardHelpOptions = true,
        footer = {"", "Example:", "  thirstline new my-trial"})
final class NewCommand implements Callable<Integer> {

    @Parameters(paramLabel = "DIR", description = "Folder for the new study; made if it does not exist.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path folder;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        for (Path written : NewStudy.write(folder)) {
            out.println("wrote " + written);
        }
        out.println();
        out.println("Put your weather file beside it, name it in " + folder.resolve("study.yaml") + ", then:");
        out.println("  thirstline run " + folder.resolve("study.yaml"));
        return 0;
    }
}
