using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Analysis;

/// <summary>A comment (nc-allow NAME: reason): silences that finding in its own block and the next. Columns are bytes.</summary>
public readonly record struct AllowComment(string Name, string Reason, int StartColumn, int EndColumn);

/// <summary>Reads the comments that ask for silence.</summary>
public static class AllowComments
{
    const string Mark = "nc-allow";

    /// <summary>A quick look: false only where there is certainly none.</summary>
    public static bool MayStandIn(ReadOnlySpan<byte> text)
    {
        for (var at = text.IndexOf((byte)'('); at >= 0;)
        {
            var rest = text[(at + 1)..].TrimStart((byte)' ');
            if (rest.Length >= Mark.Length && Ascii.EqualsIgnoreCase(rest[..Mark.Length], Mark))
                return true;
            var next = text[(at + 1)..].IndexOf((byte)'(');
            at = next < 0 ? -1 : at + 1 + next;
        }
        return false;
    }

    /// <summary>The asking comments of a block.</summary>
    public static AllowComment[] In(in Block block)
    {
        var found = new List<AllowComment>();
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind != TokenKind.Comment)
                continue;
            var inside = block.StringOf(token).AsSpan()[1..^1].Trim();
            if (!inside.StartsWith(Mark, StringComparison.OrdinalIgnoreCase))
                continue;
            var rest = inside[Mark.Length..].TrimStart();
            var colon = rest.IndexOf(':');
            var name = (colon < 0 ? rest : rest[..colon]).Trim().ToString().ToLowerInvariant();
            var reason = colon < 0 ? "" : rest[(colon + 1)..].Trim().ToString();
            found.Add(new AllowComment(name, reason, token.Start, token.End));
        }
        return [.. found];
    }
}
