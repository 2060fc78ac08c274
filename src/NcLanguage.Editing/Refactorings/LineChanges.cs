using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>What differs between two texts with the same lines, as edits within the lines.</summary>
static class LineChanges
{
    public static Draft Between(SourceText before, SourceText after)
    {
        var draft = new Draft(before);
        for (var line = 0; line < before.LineCount; line++)
        {
            var old = before.Line(line);
            var now = after.Line(line);
            if (old.SequenceEqual(now))
                continue;
            var start = old.CommonPrefixLength(now);
            var same = 0;
            while (same < Math.Min(old.Length, now.Length) - start && old[^(same + 1)] == now[^(same + 1)])
                same++;
            draft.Replace(line, start, old.Length - same, Encoding.UTF8.GetString(now[start..^same]));
        }
        return draft;
    }
}
