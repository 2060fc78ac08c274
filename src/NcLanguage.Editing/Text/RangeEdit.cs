namespace NcLanguage.Editing;

/// <summary>A stretch of text and what takes its place.</summary>
public sealed record RangeEdit(TextStretch Stretch, string NewText);
