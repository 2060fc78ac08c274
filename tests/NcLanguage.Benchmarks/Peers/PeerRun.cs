using System.Diagnostics;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>One server with one text of a size: opened, edited, asked; the samples go into a table.</summary>
sealed class PeerRun(LspSession session, PeerServer server, int size, PeerTable table)
{
    /// <summary>Edits that are tried however long they take: a key at three places, and lines pasted.</summary>
    const int FirstEdits = 4;
    const int MostRounds = 15;
    const int MostHovers = 15;

    /// <summary>Findings of a text of more lines than this may come in two sendings, the first before distant places were compared.</summary>
    const int LinesOfALargeProgram = 4_000;

    /// <summary>Milliseconds after which our server is at work on what compares distant places.</summary>
    const int LongerThanTheFingersRest = 60;

    /// <summary>Milliseconds between two words that change all that follows: no hand writes such words faster, and in the pause memory is collected as it is behind a hand.</summary>
    const int BetweenWords = 500;

    bool MayComeInTwo => server.IsOurs && size > LinesOfALargeProgram;

    string _uri = "";
    string[] _lines = [];
    int _version = 1;

    /// <summary>Starts servers and ends them: the time from the process's start to the answer to initialize.</summary>
    public static void Starts(PeerServer server, PeerTable table)
    {
        InFolder(server, 10, (folder, _) =>
        {
            using var session = new LspSession(server.Executable, server.Arguments, folder);
            table.Add(PeerTable.Start, 0, server, session.Initialize(folder, mayPull: !server.IsOurs));
            session.Exit();
        });
    }

    /// <summary>Opens a text and no more.</summary>
    public static void Opens(PeerServer server, int size, PeerTable table) => InFolder(server, size, (folder, text) =>
    {
        using var session = new LspSession(server.Executable, server.Arguments, folder);
        session.Initialize(folder, mayPull: !server.IsOurs);
        var run = new PeerRun(session, server, size, table) { _uri = new Uri(Path.Combine(folder, server.FileName)).AbsoluteUri };
        session.Settle(100);
        table.Add(PeerTable.Open, size, server, run.Open(text));
        session.Exit();
    });

    /// <param name="server">The server.</param>
    /// <param name="size">Lines of the text.</param>
    /// <param name="table">What takes the samples.</param>
    /// <param name="seconds">How long edits are tried, beyond the first of the weightiest kinds.</param>
    public static void Run(PeerServer server, int size, PeerTable table, double seconds) => InFolder(server, size, (folder, text) =>
    {
        using var session = new LspSession(server.Executable, server.Arguments, folder);
        session.Initialize(folder, mayPull: !server.IsOurs);
        new PeerRun(session, server, size, table).Run(folder, text, seconds);
        session.Exit();
    });

    void Run(string folder, string text, double seconds)
    {
        _uri = new Uri(Path.Combine(folder, server.FileName)).AbsoluteUri;
        _lines = text.Split('\n');
        session.Settle(100);
        table.Add(PeerTable.Open, size, server, Open(text));
        session.Settle(Math.Max(300, size / 1000));
        table.Add(PeerTable.Memory, size, server, session.Memory().Now);
        Edits(seconds);
        Hovers(seconds / 3);
        table.Add(PeerTable.Peak, size, server, session.Memory().Peak);
    }

    double Open(string text)
    {
        var document = new JsonObject { ["uri"] = _uri, ["languageId"] = server.Language, ["version"] = 1, ["text"] = text };
        return Findings(session.Notify("textDocument/didOpen", new JsonObject { ["textDocument"] = document })).First;
    }

    void Edits(double seconds)
    {
        var edits = PeerEdits.Of(server, _lines).ToList();
        TryAndTakeBack(edits[0], isWarmUp: true);
        var clock = Stopwatch.StartNew();
        for (var i = 0; i < edits.Count * MostRounds && (i < FirstEdits || clock.Elapsed.TotalSeconds < seconds); i++)
            TryAndTakeBack(edits[i % edits.Count], isWarmUp: false);
    }

    void TryAndTakeBack((string Row, PeerEdit Edit) named, bool isWarmUp)
    {
        foreach (var edit in new[] { named.Edit, named.Edit.Undo(_lines) })
        {
            var (first, complete) = Findings(Change(edit));
            session.Settle(10);
            if (named.Row == PeerEdits.Following)
                Thread.Sleep(BetweenWords);
            if (isWarmUp)
                continue;
            table.Add(named.Row, size, server, complete);
            if (MayComeInTwo)
                table.Add(PeerTable.First(named.Row), size, server, first);
        }
    }

    /// <summary>A hover in the middle of the text, asked for right behind a key struck at its beginning, and one near a word that changes all that follows, right behind it.</summary>
    void Hovers(double seconds)
    {
        var edits = PeerEdits.Of(server, _lines).ToList();
        Hovers(PeerTable.Hover, [edits[0].Edit], _ => _lines.Length / 2, seconds);
        Hovers(PeerTable.HoverBehindWord, [.. from named in edits where named.Row == PeerEdits.Following select named.Edit], edit => edit.EndLine + 12, seconds);
    }

    void Hovers(string row, PeerEdit[] edits, Func<PeerEdit, int> lineNear, double seconds)
    {
        var clock = Stopwatch.StartNew();
        for (var i = 0; edits.Length > 0 && i < MostHovers && (i < Math.Max(2, edits.Length) || clock.Elapsed.TotalSeconds < seconds); i++)
        {
            var edit = edits[i % edits.Length];
            var word = PeerEdits.Word(_lines, lineNear(edit));
            var sent = Change(edit);
            var (milliseconds, hasAnswer) = session.Time("textDocument/hover", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = _uri },
                ["position"] = new JsonObject { ["line"] = word.Line, ["character"] = word.Column },
            });
            if (!hasAnswer)
                throw new InvalidOperationException($"{server.Name} has no hover for: {_lines[word.Line]}");
            table.Add(row, size, server, milliseconds);
            Findings(sent);
            Findings(Change(edit.Undo(_lines)));
            session.Settle(10);
            if (row == PeerTable.HoverBehindWord)
                Thread.Sleep(BetweenWords);
        }
    }

    long Change(PeerEdit edit) => session.Notify("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = _uri, ["version"] = ++_version },
        ["contentChanges"] = new JsonArray(edit.Change),
    });

    /// <summary>Milliseconds from a change to the first findings of its version, and to the last.</summary>
    (double First, double Complete) Findings(long sent)
    {
        if (session.Pulls)
        {
            var asked = LspSession.Milliseconds(sent, session.Reply(Ask()).At);
            return (asked, asked);
        }
        var first = session.Published(_uri, _version).At;
        if (!MayComeInTwo)
            return (LspSession.Milliseconds(sent, first), LspSession.Milliseconds(sent, first));
        // All is compared once the fingers rest. Who asks for the findings then is told them when that is done; by then, or a moment later, they have been sent as well.
        Thread.Sleep(LongerThanTheFingersRest);
        session.Reply(Ask());
        session.Settle(10, forget: false);
        return (LspSession.Milliseconds(sent, first), LspSession.Milliseconds(sent, session.NewestOf(_uri, _version).At));
    }

    int Ask() => session.Send("textDocument/diagnostic", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = _uri } }).Id;

    static void InFolder(PeerServer server, int size, Action<string, string> act)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench").FullName;
        try
        {
            var text = server.Source(size);
            File.WriteAllText(Path.Combine(folder, server.FileName), text);
            if (server.Beside is { } beside)
                File.WriteAllText(Path.Combine(folder, beside.Name), beside.Text);
            act(folder, text);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
