package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.model.error.InputException;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The {@code thirstline} command. Exit codes: 0 done, 1 the run failed, 2 the input or the command line is wrong. */
@Command(
        name = "thirstline",
        description = {
            "Yields of tall perennial biomass grasses, and what drought, soil, stand age and frost took from them.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Start with:",
            "  thirstline new my-trial",
            "  thirstline run my-trial/study.yaml",
            "",
            "Exit codes: 0 done, 1 the run failed, 2 the input or the command line is wrong."
        })
public final class Thirstline implements Runnable {

    /** The run failed for a reason that is not the user's. */
    static final int FAILED = 1;

    /** The input or the command line is wrong. */
    static final int WRONG_INPUT = 2;

    private static final List<Class<?>> COMMANDS = List.of(
            RunCommand.class,
            DroughtCommand.class,
            CompareCommand.class,
            AgeCommand.class,
            CalibrateCommand.class,
            SensitivityCommand.class,
            SweepCommand.class,
            SlidesCommand.class,
            WeatherCommand.class,
            NewCommand.class);

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    /** Runs the command and ends the virtual machine with its exit code. */
    public static void main(String[] arguments) {
        EarlyLoading.begin(arguments);
        PrintWriter out = new PrintWriter(System.out, true);
        PrintWriter err = new PrintWriter(System.err, true);
        System.exit(execute(out, err, arguments));
    }

    /**
     * Runs the command.
     *
     * @param out where results go
     * @param err where errors go
     * @param arguments the command line
     * @return the exit code
     */
    static int execute(PrintWriter out, PrintWriter err, String... arguments) {
        return commandLine(arguments)
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler(new Reporter())
                .setUsageHelpWidth(100)
                .execute(arguments);
    }

    /**
     * Only the command that was asked for, if it was asked for by name: to read the options of all of them takes a while. No lambda holds
     * the library's classes here, for they are of an old format and would then be kept out of the launcher's class archive.
     */
    private static CommandLine commandLine(String... arguments) {
        CommandLine program = new CommandLine(new Thirstline());
        for (Class<?> command : COMMANDS) {
            if (arguments.length > 0 && name(command).equals(arguments[0])) {
                return program.addSubcommand(command);
            }
        }
        for (Class<?> command : COMMANDS) {
            program.addSubcommand(command);
        }
        return program.addSubcommand(AutoComplete.GenerateCompletion.class);
    }

    private static String name(Class<?> command) {
        return command.getAnnotation(Command.class).name();
    }

    @Override
    public void run() {
        String names = spec.subcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(command -> !command.usageMessage().hidden())
                .map(CommandLine.Model.CommandSpec::name)
                .collect(Collectors.joining(", "));
        throw new ParameterException(spec.commandLine(), "Which command? One of %s.".formatted(names));
    }

    /** Turns exceptions into one clear line and an exit code. */
    private static final class Reporter implements IExecutionExceptionHandler {

        @Override
        public int handleExecutionException(
                Exception failure, CommandLine commandLine, CommandLine.ParseResult parsed) {
            PrintWriter err = commandLine.getErr();
            if (failure instanceof InputException) {
                err.println("error: " + failure.getMessage());
                return WRONG_INPUT;
            }
            err.println("error: the run failed: " + failure);
            if (System.getenv("THIRSTLINE_TRACE") != null) {
                failure.printStackTrace(err);
            } else {
                err.println("       set THIRSTLINE_TRACE=1 to see where");
            }
            return FAILED;
        }
    }
}
