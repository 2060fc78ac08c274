namespace NcLanguage.Benchmarks.Peers;

/// <summary>A server to measure, and what it is given to read.</summary>
/// <param name="Name">The head of its column.</param>
/// <param name="Language">The protocol's name of the language.</param>
/// <param name="FileName">The name of the file that is opened.</param>
/// <param name="Source">The text of so many lines.</param>
/// <param name="Paste">So many lines to paste between two others.</param>
/// <param name="Beside">A file beside it, name and text.</param>
/// <param name="IsOurs">Whether findings come in two sendings for a large file, and edits that change all that follows are tried.</param>
sealed record PeerServer(
    string Name, string Executable, string[] Arguments, string Language, string FileName, Func<int, string> Source, Func<int, string> Paste,
    (string Name, string Text)? Beside, bool IsOurs)
{
    /// <summary>Whether the program is one of ours that leaves the order of its text.</summary>
    public bool LeavesOrder { get; private init; }

    /// <summary>Our server with each kind of program, then the others that were named.</summary>
    public static List<PeerServer> All(string ours, string? clangd, string? typeScript)
    {
        List<PeerServer> servers = [.. Enum.GetValues<SampleKind>().Select(kind => Ours(ours, kind))];
        if (clangd is not null)
            servers.Insert(1, new PeerServer(
                "clangd", clangd, ["--background-index=0", "--log=error"], "c", "bench.c", lines => PeerSource.C(lines), lines => PeerSource.C(lines, "pasted"), null, false));
        if (typeScript is not null)
            servers.Add(new PeerServer(
                "TypeScript 7", typeScript, ["--lsp", "-stdio"], "typescript", "bench.ts", lines => PeerSource.TypeScript(lines), lines => PeerSource.TypeScript(lines, "pasted"),
                ("tsconfig.json", """{ "compilerOptions": { "strict": true } }"""), false));
        return servers;
    }

    static PeerServer Ours(string executable, SampleKind kind) => new(
        kind.ToString().ToLowerInvariant(), executable, ["serve"], "nc", "bench.nc", lines => SampleProgram.Make(lines, kind), lines => SampleProgram.Paste(lines, kind),
        ("bench.setup.json", SampleProgram.Setup), true) { LeavesOrder = kind == SampleKind.Calls };
}
