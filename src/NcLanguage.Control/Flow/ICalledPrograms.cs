using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Flow;

/// <summary>Finds programs that a program calls and does not hold itself.</summary>
public interface ICalledPrograms
{
    /// <summary>The file named by a program number, or null where there is none.</summary>
    CalledFile? Find(int number);

    /// <summary>Why the file of a program number was not read, as a clause that begins with its name; null where no file of that number stands there, or
    /// <see cref="Find"/> gives it.</summary>
    string? WhyNotRead(int number) => null;

    /// <summary>The programs that could be called, by their numbers, each with the name of its file. Nothing is read. Empty where they cannot be listed.</summary>
    IReadOnlyList<(int Number, string Name)> List() => [];
}

/// <summary>A file with a called program.</summary>
/// <param name="Name">Its name without folders.</param>
/// <param name="Path">Where it lies.</param>
public sealed record CalledFile(string Name, string Path, SourceText Text);
