using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Support;

/// <summary>One program beside the one under test.</summary>
sealed class Folder(int number, string text) : ICalledPrograms
{
    public CalledFile? Find(int asked) =>
        asked == number ? new CalledFile($"O{number}.nc", $"/job/O{number}.nc", SourceText.From(text.ReplaceLineEndings("\n"))) : null;

    public static AnalysisOptions Of(int number, string text) => new(Programs: new Folder(number, text));
}
