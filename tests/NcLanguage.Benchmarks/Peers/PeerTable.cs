using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>Samples by row, size and server, and the Markdown table made of them.</summary>
sealed class PeerTable(IReadOnlyList<PeerServer> servers)
{
    public const string Start = "start";
    public const string Open = "open";
    public const string Memory = "memory";
    public const string Peak = "peak";
    public const string Hover = "hover";
    public const string HoverBehindWord = "hover behind word";

    readonly Dictionary<(string Row, int Size, string Server), List<double>> _samples = [];

    /// <summary>The name under which times to the first of two sendings of findings are counted.</summary>
    public static string First(string row) => row + ", first";

    public void Add(string row, int size, PeerServer server, double sample)
    {
        ref var samples = ref CollectionsMarshal.GetValueRefOrAddDefault(_samples, (row, size, server.Name), out _);
        (samples ??= []).Add(sample);
    }

    /// <summary>The table. A ratio is to the slowest of our programs in the same row that run in the order of their text.</summary>
    public string Write(IReadOnlyList<int> sizes)
    {
        var text = new StringBuilder("| | lines |");
        foreach (var server in servers.OrderBy(server => !server.IsOurs))
            text.Append($" {server.Name} |");
        text.Append("\n| --- | ---: |").Insert(text.Length, " ---: |", servers.Count).Append('\n');
        Row(text, "start of the process → answer to `initialize`, ms", Start, 0);
        foreach (var (title, row) in (ReadOnlySpan<(string, string)>)[
            ("open → findings, ms", Open), ("memory once opened, MB", Memory), ("a key → first findings, ms", First(PeerEdits.Key)), ("a key → all findings, ms", PeerEdits.Key),
            ("1,000 lines pasted or taken back → first findings, ms", First(PeerEdits.Paste)), ("1,000 lines pasted or taken back → all findings, ms", PeerEdits.Paste), ("a word that changes all that follows → first findings, ms", First(PeerEdits.Following)),
            ("the same → all findings, ms", PeerEdits.Following), ("hover asked for right behind a key, ms", Hover), ("hover near a word that changes all that follows, asked for right behind it, ms", HoverBehindWord), ("most memory while edited, MB", Peak)])
            foreach (var size in sizes)
                Row(text, title, row, size);
        return text.ToString();
    }

    void Row(StringBuilder text, string title, string row, int size)
    {
        if (!servers.Any(server => Samples(row, size, server) is not null))
            return;
        var ours = servers.Where(server => server is { IsOurs: true, LeavesOrder: false } && Samples(row, size, server) is not null).Select(server => Median(Samples(row, size, server)!)).DefaultIfEmpty(double.NaN).Max();
        text.Append($"| {title} | {(size == 0 ? "" : size.ToString("N0", CultureInfo.InvariantCulture))} |");
        foreach (var server in servers.OrderBy(server => !server.IsOurs))
        {
            if (Samples(row, size, server) is not { } samples)
            {
                text.Append(" |");
                continue;
            }
            text.Append(' ').Append(Number(Median(samples)));
            if (samples.Count > 4)
                text.Append($" ({Number(samples[(int)(0.95 * (samples.Count - 1) + 0.5)])})");
            if (!server.IsOurs)
                text.Append($" ×{Number(Median(samples) / ours)}");
            text.Append(" |");
        }
        text.Append('\n');
    }

    List<double>? Samples(string row, int size, PeerServer server)
    {
        if (!_samples.TryGetValue((row, size, server.Name), out var samples))
            return null;
        samples.Sort();
        return samples;
    }

    static double Median(List<double> sorted) => sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[sorted.Count / 2 - 1] + sorted[sorted.Count / 2]) / 2;

    internal static string Number(double value) => value.ToString(value < 10 ? "0.0" : "N0", CultureInfo.InvariantCulture);
}
