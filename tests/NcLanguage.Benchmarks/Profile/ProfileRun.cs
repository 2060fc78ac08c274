using System.Text.Json.Nodes;
using NcLanguage.Benchmarks.Peers;
using NcLanguage.Benchmarks.Soak;

namespace NcLanguage.Benchmarks.Profile;

/// <summary>Makes the profile that the native compiler arranges the product's code by. The product, compiled as it runs, counts each way through its own methods while it checks programs and
/// while somebody types in them. None of the programs that speed is measured with is among them.</summary>
static class ProfileRun
{
    const int Edits = 100;

    /// <summary>The runtime counts exactly, and from a method's first call to its last: nothing is compiled anew because it runs often.</summary>
    static readonly (string Name, string Value)[] s_counting =
    [
        ("DOTNET_WritePGOData", "1"), ("DOTNET_TieredPGO_InstrumentOnlyHotCode", "0"), ("DOTNET_TieredPGO_ScalableCounts", "0"),
        ("DOTNET_TC_CallCounting", "0"), ("DOTNET_TC_QuickJitForLoops", "1"), ("DOTNET_TC_OnStackReplacement", "0"),
    ];

    /// <param name="executable">The product as `dotnet build -c Release` makes it.</param>
    /// <param name="programs">A folder of programs with their setups.</param>
    /// <param name="profile">The file to write.</param>
    public static void Run(string executable, string programs, string profile)
    {
        foreach (var (name, value) in s_counting)
            Environment.SetEnvironmentVariable(name, value);
        var methods = new CountedMethods(Path.GetDirectoryName(executable)!);
        var folder = Directory.CreateTempSubdirectory("nc-profile");
        try
        {
            var counts = Path.Combine(folder.FullName, "counts.txt");
            Environment.SetEnvironmentVariable("DOTNET_PGODataPath", counts);
            foreach (var part in (string[])[programs, WriteLarge(folder, stock: true), WriteLarge(folder, stock: false)])
            {
                Learn($"check of {part}", () => CheckThroughput.Time(executable, "check", part, "--format", "json", "--fail-on", "never"));
                Learn($"typing in {part}", () => Type(executable, part));
            }
            Console.WriteLine($"{ProfileFile.Write(methods, profile)} methods in {profile}");

            void Learn(string what, Action run)
            {
                Console.WriteLine(what);
                run();
                methods.Add(counts);
                File.Delete(counts);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Milling and drilling of 5,000 moves a program, between two clamps.</summary>
    static string WriteLarge(DirectoryInfo folder, bool stock)
    {
        var part = folder.CreateSubdirectory(stock ? "large-with-stock" : "large");
        foreach (var (name, setup, program) in StockPrograms.All)
        {
            var path = Path.Combine(part.FullName, string.Concat(name.Where(char.IsLetterOrDigit)) + ".nc");
            File.WriteAllText(path, program);
            File.WriteAllText(Path.ChangeExtension(path, ".setup.json"), StockPrograms.SetupFile(setup, stock));
        }
        return part.FullName;
    }

    /// <summary>Opens each program of a folder, makes distances of its positions and positions of them again, and types in it.</summary>
    static void Type(string executable, string folder)
    {
        using var session = new LspSession(executable, ["serve"], folder);
        session.Initialize(folder, mayPull: false);
        foreach (var path in Directory.GetFiles(folder, "*.nc", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
            Type(session, new Uri(path).AbsoluteUri, File.ReadAllText(path));
        session.Exit();
    }

    static void Type(LspSession session, string uri, string text)
    {
        var document = new JsonObject { ["uri"] = uri, ["languageId"] = "nc", ["version"] = 1, ["text"] = text };
        session.Notify("textDocument/didOpen", new JsonObject { ["textDocument"] = document });
        session.Published(uri, 1);
        var version = 1;
        foreach (var (from, to) in ((string, string)[])[("G90", "G91"), ("G91", "G90")])
            if (text.IndexOf(from, StringComparison.Ordinal) is >= 0 and var at)
            {
                var (line, column) = (text.AsSpan(0, at).Count('\n'), at - 1 - text.LastIndexOf('\n', at));
                Change(new PeerEdit(line, column, line, column + from.Length, to).Change);
                session.Time("textDocument/diagnostic", SomeRequest.Of(SomeRequest.Kinds - 1, uri, 0, 0, 0).Parameters);
                text = text[..at] + to + text[(at + from.Length)..];
            }
        var (random, typist) = (new Random(1), new Typist(text, new Random(2)));
        for (var edit = 0; edit < Edits; edit++)
        {
            Change(typist.Next());
            var (line, character) = typist.Cursor;
            var (method, parameters) = SomeRequest.Of(random.Next(SomeRequest.Kinds), uri, line, character, typist.LineCount);
            session.Time(method, parameters);
        }
        session.Notify("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = uri } });

        void Change(JsonObject change)
        {
            session.Notify("textDocument/didChange", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = ++version },
                ["contentChanges"] = new JsonArray(change),
            });
            session.Published(uri, version);
        }
    }
}
