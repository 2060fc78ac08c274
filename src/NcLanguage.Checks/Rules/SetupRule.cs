namespace NcLanguage.Checks;

/// <summary>A rule on setup and machine files: the reader of these files finds it, the rule says what it is. Its example
/// is a setup file, its example put right another.</summary>
public abstract class SetupRule : Rule;
