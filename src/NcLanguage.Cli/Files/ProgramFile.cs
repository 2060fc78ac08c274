using NcLanguage.Cli.Common;
using NcLanguage.Machine.Files;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Files;

/// <summary>A program as read, and how it is written back.</summary>
/// <param name="Path">As the user wrote it; - for standard input.</param>
/// <param name="Text">Its text; one in UTF-16 is held as UTF-8.</param>
/// <param name="Wide">How it is written where that is UTF-16; null for bytes as they stand.</param>
sealed record ProgramFile(string Path, SourceText Text, WideText? Wide)
{
    /// <summary>Stands for standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>Whether writing the text back gives the very bytes that were read.</summary>
    public bool IsExact { get; private init; } = true;

    /// <summary>The state of the file that was read; null where it is none.</summary>
    public FileStamp? Stamp { get; private init; }

    public bool IsStandardInput => Path == StandardInput;

    /// <summary>Where setup and machine are looked for; null for standard input.</summary>
    public string? PlaceOnDisk => IsStandardInput ? null : Path;

    /// <summary>What to tell of the way it is written; null where a control takes it as it is.</summary>
    public string? Remark => Wide is null ? null
        : "It is written in UTF-16, two bytes for each character, where a control takes one: save it as ASCII before it is sent.";

    /// <exception cref="ProgramFailedException">It cannot be read; the message names it.</exception>
    public static ProgramFile Read(string path)
    {
        var (bytes, stamp) = path == StandardInput ? (StandardStreams.ReadInput(), null) : FileBytes.Read(path);
        if (bytes is [0xFF, 0xFE, 0, 0, ..] or [0, 0, 0xFE, 0xFF, ..])
            throw new ProgramFailedException($"{(path == StandardInput ? "the program on standard input" : path)} is written in UTF-32, which is not read: save it as ASCII");
        var wide = WideText.Of(bytes);
        var text = wide is null ? SourceText.From(bytes) : wide.Decode(bytes);
        return new ProgramFile(path, text, wide) { Stamp = stamp, IsExact = wide is null || wide.Encode(text).AsSpan().SequenceEqual(bytes) };
    }

    /// <summary>Writes a changed text in the place of the one that was read.</summary>
    /// <exception cref="CannotRunException">It could not be written, or changed since it was read; it stands as it is.</exception>
    public void Replace(SourceText text)
    {
        if (!IsExact)
            throw new CannotRunException($"{Path} holds bytes that are no UTF-16: nothing was written to it");
        WrittenFile.Replace(Path, BytesOf(text), Stamp);
    }

    /// <summary>The bytes that a text is written with, in the way that this one is.</summary>
    public byte[] BytesOf(SourceText text) => Wide?.Encode(text) ?? text.ToBytes();
}
