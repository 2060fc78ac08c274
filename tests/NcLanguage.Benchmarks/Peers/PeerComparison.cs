using System.Globalization;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>Our server beside general-purpose ones, taking turns in one run, as a table for the README.</summary>
static class PeerComparison
{
    const int Starts = 15;
    const int Rounds = 2;
    const int Million = 1_000_000;

    /// <summary>Opens beside those that edits follow: a text is opened once, and one sample tells little.</summary>
    const int FurtherOpens = 4;

    /// <param name="options">EXE [--lines 1000,10000,100000] [--million] [--clangd EXE] [--typescript EXE] [--tree-sitter LIBRARY].</param>
    public static void Run(string[] options)
    {
        var sizes = (Value(options, "--lines") ?? "1000,10000,100000").Split(',').Select(size => int.Parse(size, CultureInfo.InvariantCulture)).ToList();
        if (options.Contains("--million"))
            sizes.Add(Million);
        var servers = PeerServer.All(options[0], Value(options, "--clangd"), Value(options, "--typescript"));
        var table = new PeerTable(servers);
        for (var i = 0; i < Starts; i++)
            foreach (var server in InTurn(servers, i))
                PeerRun.Starts(server, table);
        foreach (var size in sizes)
        {
            for (var round = 0; round < (size < Million ? Rounds : 1); round++)
                foreach (var server in InTurn(servers, round))
                {
                    Console.Error.WriteLine($"{size,9} lines, round {round + 1}: {server.Name}");
                    PeerRun.Run(server, size, table, Seconds(size, server));
                }
            for (var i = 0; i < FurtherOpens; i++)
                foreach (var server in InTurn(servers, i))
                    PeerRun.Opens(server, size, table);
        }
        Console.WriteLine(table.Write(sizes));
        Console.WriteLine(Ceilings.Measure(Value(options, "--tree-sitter"), 100_000));
    }

    static double Seconds(int size, PeerServer server) => (size < Million ? 1 : 6) * (server.IsOurs ? 3 : 6);

    /// <summary>There and back, so that no server always has the one before it to thank or to blame.</summary>
    static IEnumerable<PeerServer> InTurn(List<PeerServer> servers, int round) => round % 2 == 0 ? servers : servers.AsEnumerable().Reverse();

    static string? Value(string[] options, string name) => Array.IndexOf(options, name) is >= 0 and var at && at + 1 < options.Length ? options[at + 1] : null;
}
