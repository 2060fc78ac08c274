using System.Collections.Concurrent;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/semanticTokens, whole, by range and as a difference to those sent before.</summary>
sealed class SemanticTokenFeature
{
    /// <summary>A longer text is coloured by what is in view alone.</summary>
    public const int MostLines = 50_000;

    public static SemanticTokensOptions Options { get; } = new(
        new SemanticTokensLegend(
            [.. Enum.GetNames<TokenType>().Select(Lower)],
            [.. Enum.GetNames<TokenModifiers>().Where(name => name != nameof(TokenModifiers.None)).Select(Lower)]),
        Range: true, new SemanticTokensFullOptions(Delta: true));

    readonly ConcurrentDictionary<string, (string Id, uint[] Data)> _sent = new();
    long _lastId;

    public static SemanticTokensResult InRange(FeatureContext context, TextRange range)
    {
        var (first, last) = context.Positions.ToLines(context.Text, range);
        return new SemanticTokensResult(null, Encode(context, first, Math.Min(last, first + MostLines)));
    }

    public SemanticTokensResult? Full(FeatureContext context)
    {
        if (context.Text.LineCount > MostLines)
            return null;
        var (id, data) = Keep(context, Encode(context, 0, context.Text.LineCount - 1));
        return new SemanticTokensResult(id, data);
    }

    public SemanticTokensDelta? Delta(FeatureContext context, string previous)
    {
        if (context.Text.LineCount > MostLines)
            return null;
        var isKnown = _sent.TryGetValue(context.Uri, out var before) && before.Id == previous;
        var (id, data) = Keep(context, Encode(context, 0, context.Text.LineCount - 1));
        return isKnown ? new SemanticTokensDelta(id, Edits: Difference(before.Data, data)) : new SemanticTokensDelta(id, Data: data);
    }

    /// <summary>The tokens of a text that is closed are asked for anew when it is opened again.</summary>
    public void Forget(string uri) => _sent.TryRemove(uri, out _);

    (string Id, uint[] Data) Keep(FeatureContext context, uint[] data) =>
        _sent[context.Uri] = (Interlocked.Increment(ref _lastId).ToString(System.Globalization.CultureInfo.InvariantCulture), data);

    static SemanticTokensEdit[] Difference(uint[] before, uint[] now)
    {
        var same = before.AsSpan().CommonPrefixLength(now);
        var most = Math.Min(before.Length, now.Length) - same;
        var end = 0;
        while (end < most && before[^(end + 1)] == now[^(end + 1)])
            end++;
        // Whole tokens of five numbers.
        same -= same % 5;
        end -= end % 5;
        return same == before.Length && same == now.Length ? []
            : [new SemanticTokensEdit((uint)same, (uint)(before.Length - same - end), now[same..^end])];
    }

    static uint[] Encode(FeatureContext context, int first, int last)
    {
        var tokens = SemanticTokens.In(context.Analysis, first, last, context.Cancel);
        var data = new uint[tokens.Count * 5];
        uint line = 0, start = 0;
        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            var range = context.Positions.ToRange(context.Text, token.Line, token.Start, token.End);
            var at = data.AsSpan(i * 5);
            at[0] = range.Start.Line - line;
            at[1] = range.Start.Line == line ? range.Start.Character - start : range.Start.Character;
            at[2] = range.End.Character - range.Start.Character;
            at[3] = (uint)token.Type;
            at[4] = (uint)token.Modifiers;
            (line, start) = (range.Start.Line, range.Start.Character);
        }
        return data;
    }

    static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
