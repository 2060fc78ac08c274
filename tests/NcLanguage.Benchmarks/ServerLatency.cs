using System.Globalization;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks;

/// <summary>How long an editor waits for our server: for the first answer, for the findings of a file just opened and of a key, for what it asks beside; and what the server does while nobody asks.</summary>
static class ServerLatency
{
    const int Starts = 20;
    const int Keys = 100;
    const int Requests = 40;

    /// <summary>Requests for what an editor has in view.</summary>
    static readonly string[] InView = ["hover", "completion", "inlayHint", "semanticTokens/range"];

    /// <summary>Requests for the whole text.</summary>
    static readonly string[] OfTheWhole = ["documentSymbol", "foldingRange", "codeLens", "semanticTokens/full"];

    /// <summary>Long enough for the server to have tidied up, and how long it is then looked at.</summary>
    static readonly TimeSpan LongRest = TimeSpan.FromSeconds(8), Look = TimeSpan.FromSeconds(10);

    /// <summary>The greatest part of a processor that an idle server takes: the system counts in hundredths of a second, of which a runtime that only waits takes one or two.</summary>
    const double MostIdle = 0.003;

    /// <summary>Motion views that are asked for one after the other, and what may stay of them all, MB: one of 100,000 moves alone is 63.</summary>
    const int Views = 5, MostOfViews = 64;

    /// <param name="executable">The command to start.</param>
    /// <param name="sizes">Blocks of the programs.</param>
    /// <returns>0 where each server took no processor's time at rest and pages left nothing of their size, else 1.</returns>
    public static int Run(string executable, params int[] sizes)
    {
        var starts = new List<double>();
        for (var i = 0; i < Starts; i++)
        {
            using var session = new LspSession(executable, ["serve"], Path.GetTempPath());
            starts.Add(session.Initialize(Path.GetTempPath(), mayPull: false));
            session.Exit();
        }
        Print("start of the process to the answer to initialize", starts);
        var rests = true;
        foreach (var blocks in sizes)
            foreach (var kind in Enum.GetValues<SampleKind>())
                rests &= Measure(executable, blocks, kind);
        return rests ? 0 : 1;
    }

    static bool Measure(string executable, int blocks, SampleKind kind)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench");
        try
        {
            var path = SampleProgram.Write(blocks, folder.FullName, "part", kind);
            using var session = new LspSession(executable, ["serve"], folder.FullName);
            session.Initialize(folder.FullName, mayPull: false);
            session.Settle(50);
            var name = string.Create(CultureInfo.InvariantCulture, $"{blocks,9:N0} blocks, {kind.ToString().ToLowerInvariant(),-8}");
            Measure(session, new Uri(path).AbsoluteUri, File.ReadAllText(path), name);
            var idle = Idle(session);
            Console.WriteLine(Line($"{name}: {idle:P2} of a processor at rest"));
            var before = session.Memory().Now;
            Print($"{name}: nclanguage/motionView", Times(Views, () => session.Time("nclanguage/motionView", Parameters(new Uri(path).AbsoluteUri, "motionView", 0)).Milliseconds));
            Thread.Sleep(LongRest);
            var left = session.Memory().Now - before;
            Console.WriteLine(Line($"{name}: {left:0} MB more at rest after {Views} motion views"));
            session.Exit();
            return idle <= MostIdle && left <= MostOfViews;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static void Measure(LspSession session, string uri, string text, string name)
    {
        var document = new JsonObject { ["uri"] = uri, ["languageId"] = "nc", ["version"] = 1, ["text"] = text };
        var sent = session.Notify("textDocument/didOpen", new JsonObject { ["textDocument"] = document });
        var open = LspSession.Milliseconds(sent, session.Published(uri, 1).At);
        session.Settle(300);
        Console.WriteLine(Line($"{name}: open to findings {open:0} ms, then {session.Memory().Now:0} MB"));
        var lines = text.Count('\n');
        var middle = lines / 2;
        foreach (var request in InView.Concat(OfTheWhole))
            Print($"{name}: {request}", Times(InView.Contains(request) ? Requests : Requests / 8, () => session.Time("textDocument/" + request, Parameters(uri, request, middle)).Milliseconds));
        var version = 1;
        foreach (var share in new[] { 0.01, 0.5, 0.99 })
        {
            var line = (int)(share * (lines - 40));
            Print($"{name}: a key at {share:P0} to its first findings", Times(Keys, () =>
            {
                var change = session.Notify("textDocument/didChange", Change(uri, ++version, line));
                var at = session.Published(uri, version).At;
                session.Settle(5);
                return LspSession.Milliseconds(change, at);
            }));
        }
        foreach (var request in InView)
            Print($"{name}: {request} right behind a key", Times(Requests, () =>
            {
                session.Notify("textDocument/didChange", Change(uri, ++version, middle));
                var (milliseconds, _) = session.Time("textDocument/" + request, Parameters(uri, request, middle));
                session.Published(uri, version);
                session.Settle(5);
                return milliseconds;
            }));
        var (now, peak) = session.Memory();
        Console.WriteLine(Line($"{name}: {now:0} MB after {version - 1} edits, {peak:0} MB at most"));
    }

    static double Idle(LspSession session)
    {
        Thread.Sleep(LongRest);
        var before = session.ProcessorSeconds();
        Thread.Sleep(Look);
        return (session.ProcessorSeconds() - before) / Look.TotalSeconds;
    }

    static JsonObject Parameters(string uri, string request, int line)
    {
        var parameters = new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri } };
        if (request is "hover" or "completion")
            parameters["position"] = new JsonObject { ["line"] = line, ["character"] = 9 };
        else if (request is "inlayHint" or "semanticTokens/range")
            parameters["range"] = new JsonObject
            {
                ["start"] = new JsonObject { ["line"] = line - 30, ["character"] = 0 },
                ["end"] = new JsonObject { ["line"] = line + 30, ["character"] = 0 },
            };
        return parameters;
    }

    /// <summary>A letter without a number, written and taken back in turn, so that the findings differ.</summary>
    static JsonObject Change(string uri, int version, int line) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
        ["contentChanges"] = new JsonArray(new JsonObject
        {
            ["range"] = new JsonObject
            {
                ["start"] = new JsonObject { ["line"] = line, ["character"] = 0 },
                ["end"] = new JsonObject { ["line"] = line, ["character"] = version % 2 == 0 ? 0 : 2 },
            },
            ["text"] = version % 2 == 0 ? "Q " : "",
        }),
    };

    static List<double> Times(int count, Func<double> measure) => [.. Enumerable.Range(0, count).Select(_ => measure())];

    static void Print(string what, List<double> times)
    {
        times.Sort();
        Console.WriteLine(Line($"{what}: median {times[times.Count / 2]:0.00} ms, p95 {times[(int)(0.95 * (times.Count - 1) + 0.5)]:0.00} ms, max {times[^1]:0.00} ms"));
    }

    static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
