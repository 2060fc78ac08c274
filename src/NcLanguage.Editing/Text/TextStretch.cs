namespace NcLanguage.Editing;

/// <summary>A stretch of text; lines and byte columns from 0, the end excluded.</summary>
public readonly record struct TextStretch(int StartLine, int StartColumn, int EndLine, int EndColumn);
