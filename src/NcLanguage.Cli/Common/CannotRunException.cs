namespace NcLanguage.Cli.Common;

/// <summary>The command cannot do what was asked; the message is one line for the user.</summary>
class CannotRunException(string message) : Exception(message);

/// <summary>Whoever read standard output has seen enough and closed it: there is nothing more to do, and nothing to say.</summary>
sealed class ReaderGoneException() : Exception("nobody reads the output any more");

/// <summary>The user stopped the command; the message is one line that says how far it came.</summary>
sealed class StoppedException(string message) : OperationCanceledException(message)
{
    /// <summary>What is said where it cannot be told how far it came.</summary>
    public const string Usual = "stopped before it was done";
}

/// <summary>One program cannot be read or written; where many are checked, the others still are.</summary>
sealed class ProgramFailedException(string message) : CannotRunException(message);
