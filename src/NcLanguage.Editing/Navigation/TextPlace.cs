namespace NcLanguage.Editing;

/// <summary>A place in a program: in the text asked about where the path is null.</summary>
public readonly record struct TextPlace(string? Path, int Line, int StartColumn, int EndColumn);
