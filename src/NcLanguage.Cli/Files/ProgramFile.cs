using System.Text;
using NcLanguage.Cli.Common;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Files;

/// <summary>A program as read, and how it is written back.</summary>
/// <param name="Path">As the user wrote it; - for standard input.</param>
/// <param name="Text">Its text; one in UTF-16 is held as UTF-8.</param>
/// <param name="Encoding">UTF-16 where a byte order mark says so; null for bytes as they stand.</param>
sealed record ProgramFile(string Path, SourceText Text, Encoding? Encoding)
{
    /// <summary>Stands for standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>Whether writing the text back gives the very bytes that were read.</summary>
    public bool IsExact { get; private init; } = true;

    public bool IsStandardInput => Path == StandardInput;

    /// <summary>Where setup and machine are looked for; null for standard input.</summary>
    public string? PlaceOnDisk => IsStandardInput ? null : Path;

    /// <exception cref="UnreadableProgramException">It cannot be read; the message names it.</exception>
    public static ProgramFile Read(string path)
    {
        var bytes = path == StandardInput ? ReadStandardInput() : ReadBytes(path);
        var encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => Encoding.Unicode,
            [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode,
            _ => null,
        };
        var text = encoding is null
            ? SourceText.From(bytes)
            : SourceText.From(Encoding.Convert(encoding, Encoding.UTF8, bytes, 2, bytes.Length - 2));
        var program = new ProgramFile(path, text, encoding);
        return encoding is null ? program : program with { IsExact = program.BytesOf(text).AsSpan().SequenceEqual(bytes) };
    }

    /// <summary>The bytes that a changed text is written with.</summary>
    public byte[] BytesOf(SourceText text)
    {
        if (Encoding is null)
            return text.ToBytes();
        var bytes = text.ToBytes();
        return [.. Encoding.GetPreamble(), .. Encoding.Convert(Encoding.UTF8, Encoding, bytes)];
    }

    static byte[] ReadStandardInput()
    {
        using var input = Console.OpenStandardInput();
        using var bytes = new MemoryStream();
        try
        {
            input.CopyTo(bytes);
        }
        catch (IOException e) when (bytes.Length >= Array.MaxLength - 1024)
        {
            throw new UnreadableProgramException($"the program on standard input is too large: {e.Message}");
        }
        return bytes.ToArray();
    }

    static byte[] ReadBytes(string path)
    {
        try
        {
            if (Directory.Exists(path))
                throw new UnreadableProgramException($"{path} is a folder, not a program");
            if (new FileInfo(path) is { Exists: true } file && file.Length > Array.MaxLength)
                throw new UnreadableProgramException($"{path} is larger than 2 GB, too large to be read");
            return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new UnreadableProgramException($"there is no file {path}");
        }
        catch (UnauthorizedAccessException)
        {
            throw new UnreadableProgramException($"{path} may not be read by you");
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException or OutOfMemoryException)
        {
            throw new UnreadableProgramException($"{path} could not be read: {e.Message}");
        }
    }
}
