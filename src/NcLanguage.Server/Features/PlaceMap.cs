using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>Places in several files as the protocol says them. Each other file is read once.</summary>
sealed class PlaceMap(FeatureContext context)
{
    readonly Dictionary<string, SourceText> _texts = [];

    public string UriOf(string? path) => path is null ? context.Uri : context.Jobs.UriOf(path);

    /// <param name="path">Null for the text asked about.</param>
    /// <param name="line">From 0.</param>
    /// <param name="start">Byte column from 0.</param>
    /// <param name="end">Byte column, excluded.</param>
    public TextRange Range(string? path, int line, int start, int end) => context.Positions.ToRange(TextOf(path), line, start, end);

    public TextRange Range(string? path, TextStretch stretch) => new(
        context.Positions.ToPosition(TextOf(path), stretch.StartLine, stretch.StartColumn), context.Positions.ToPosition(TextOf(path), stretch.EndLine, stretch.EndColumn));

    public Location Location(TextPlace place) => new(UriOf(place.Path), Range(place.Path, place.Line, place.StartColumn, place.EndColumn));

    // What vanished meanwhile has no places any more: the start of its file stands for them.
    SourceText TextOf(string? path)
    {
        if (path is null)
            return context.Text;
        if (!_texts.TryGetValue(path, out var text))
            _texts[path] = text = context.Jobs.TextOf(path) ?? SourceText.From("");
        return text;
    }
}
