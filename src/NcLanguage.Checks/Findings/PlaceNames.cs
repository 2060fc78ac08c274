using System.Text;

namespace NcLanguage.Checks;

/// <summary>Names of the coordinates that places of a message are meant in. Whether they are to be said hangs on the whole run, which is known only when its findings are
/// told: until then each place carries its name between two marks.</summary>
public static class PlaceNames
{
    // Noncharacters: they stand in no text, and are there for what a program marks for itself (The Unicode Standard, section 23.7).
    const char Begin = '\uFDD0';
    const char End = '\uFDD1';

    /// <summary>The name of the coordinates of the place it is put behind, marked.</summary>
    internal static string Marked(string name) => $"{Begin}{name}{End}";

    /// <summary>A message as it is told: the first place has its name behind it, and each further one that is meant in other coordinates than the one before.</summary>
    /// <param name="plain">The coordinates that go without saying, see <see cref="Analysis.ProgramRun.PlainCoordinates"/>.</param>
    public static string Told(string message, string? plain)
    {
        var at = message.IndexOf(Begin, StringComparison.Ordinal);
        if (at < 0)
            return message;
        var text = new StringBuilder(message.Length);
        var (from, last) = (0, plain ?? "");
        while (at >= 0 && message.IndexOf(End, at) is >= 0 and var end)
        {
            text.Append(message, from, at - from);
            var name = message[(at + 1)..end];
            if (name != last && plain != "" && !(plain is not null && name == WorkCoordinates.NotKnown))
                text.Append(" (").Append(name).Append(')');
            last = name;
            from = end + 1;
            at = message.IndexOf(Begin, from);
        }
        return text.Append(message, from, message.Length - from).ToString();
    }

    /// <summary>A finding as it is told.</summary>
    internal static Finding Told(Finding finding, string? plain) =>
        Told(finding.Message, plain) is var message && ReferenceEquals(message, finding.Message) ? finding : finding with { Message = message };
}
