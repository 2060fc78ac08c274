namespace NcLanguage.Cli.Common;

/// <summary>The command cannot do what was asked; the message is one line for the user.</summary>
class CannotRunException(string message) : Exception(message);

/// <summary>One program cannot be read; where many are checked, the others still are.</summary>
sealed class UnreadableProgramException(string message) : CannotRunException(message);
