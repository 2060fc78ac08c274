using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Help;
using NcLanguage.Cli.Check;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Compare;
using NcLanguage.Cli.Completions;
using NcLanguage.Cli.Demo;
using NcLanguage.Cli.Explain;
using NcLanguage.Cli.Figures;
using NcLanguage.Cli.Files;
using NcLanguage.Cli.Format;
using NcLanguage.Cli.Grammar;
using NcLanguage.Cli.Holes;
using NcLanguage.Cli.Schema;
using NcLanguage.Cli.Serve;
using NcLanguage.Cli.Sheet;
using NcLanguage.Cli.Trace;
using NcLanguage.Cli.View;
using NcLanguage.Machine.Loading;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli;

/// <summary>The command line as a whole: its commands, and what becomes of everything that goes wrong.</summary>
static class Application
{
    public static string Version { get; } = typeof(Application).Assembly.GetName().Version?.ToString(3) ?? "0.0.0";

    static readonly (string Name, Func<Command> Create)[] All =
    [
        ("check", CheckCommand.Create),
        ("trace", TraceCommand.Create),
        ("holes", HolesCommand.Create),
        ("view", ViewCommand.Create),
        ("sheet", SheetCommand.Create),
        ("compare", CompareCommand.Create),
        ("format", FormatCommand.Create),
        ("explain", ExplainCommand.Create),
        ("figure", FigureCommand.Create),
        ("schema", SchemaCommand.Create),
        ("grammar", GrammarCommand.Create),
        ("demo", DemoCommand.Create),
        ("completions", CompletionsCommand.Create),
        ("serve", ServeCommand.Create),
    ];

    /// <summary>The commands; where the first word names one, that alone: an editor waits for the server to start, and making all of them takes longer than
    /// the rest of its start.</summary>
    static RootCommand Commands(string[] args)
    {
        var root = new RootCommand("Reads CNC milling programs as the control will, and tells what would go wrong at the machine.");
        if (!Console.IsOutputRedirected && root.Options.OfType<HelpOption>().FirstOrDefault()?.Action is HelpAction help)
            help.MaxWidth = TerminalSize.Get().Width;
        var isNamed = args.Length > 0 && Array.Exists(All, command => command.Name == args[0]);
        foreach (var (name, create) in All)
            if (!isNamed || name == args[0])
                root.Add(create());
        return root;
    }

    public static async Task<int> RunAsync(string[] args)
    {
        StandardStreams.Prepare();
        FileLimit.FailTheWrite();
        var commands = Commands(args);
        if (args is ["format", ..])
            args = FormatCommand.WithStep(args);
        var parse = commands.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        // A line that a shell wants completed is unfinished as a matter of course.
        var isCompleted = commands.Directives.OfType<SuggestDirective>().Any(directive => parse.GetResult(directive) is not null);
        if (!isCompleted && parse.Action is not HelpAction && (parse.Errors.Count > 0 || UsageError.HasUnknown(parse)))
            return Fail(UsageError.Of(parse));
        var invocation = new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null };
        // A server holds nothing that could be left half done: it ends at once.
        using var interruption = args is ["serve", ..] ? null : new Interruption();
        try
        {
            return await parse.InvokeAsync(invocation, interruption?.Token ?? CancellationToken.None).ConfigureAwait(false);
        }
        catch (CannotRunException e)
        {
            return Fail(e.Message);
        }
        catch (ReaderGoneException)
        {
            return ExitCode.ReaderGone;
        }
        catch (OperationCanceledException e)
        {
            Tell(e is StoppedException ? e.Message : StoppedException.Usual);
            return interruption?.ExitCode ?? ExitCode.Interrupted;
        }
        catch (IOException e)
        {
            return Fail(OneLine(e.Message));
        }
#pragma warning disable CA1031 // The last place: whatever it is, the user gets one line.
        catch (Exception e)
#pragma warning restore CA1031
        {
            return Fail($"internal error: {e.GetType().Name}: {OneLine(e.Message)}; please report it with the file that was read");
        }
    }

    static int Fail(string message)
    {
        Tell(message);
        return ExitCode.CouldNotRun;
    }

    /// <summary>One line for the user, beside the output.</summary>
    public static void Tell(string message) => Console.Error.WriteLine("nclanguage: " + ShownText.Of(message));

    /// <summary>A mistake in a setup, machine or cutting file, with its place.</summary>
    /// <param name="more">What is said behind it.</param>
    public static void Tell(SetupProblem problem, string more = "") => Tell($"{problem.Path}, line {problem.Line}: {problem.Message}{more}");

    /// <summary>What the runtime says, which may take several lines.</summary>
    static string OneLine(string message) =>
        string.Join(' ', message.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
