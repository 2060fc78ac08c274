namespace NcLanguage.Server.Documents;

/// <summary>Somebody at work on a program.</summary>
/// <param name="Line">Where the last change ended, from 0.</param>
/// <param name="IsFlowing">Whether the last change was a key within that line and the next may follow at once: the word there is half written.</param>
/// <param name="IsNew">Whether the program, as it was opened or saved last, had no block yet: it is being written from its beginning.</param>
readonly record struct Typing(int Line, bool IsFlowing, bool IsNew);
