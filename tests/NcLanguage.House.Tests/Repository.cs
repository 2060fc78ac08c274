using System.Runtime.CompilerServices;

namespace NcLanguage.House.Tests;

/// <summary>The checkout that the tests were built from.</summary>
static class Repository
{
    public static string Root { get; } = Find();

    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    static string Find([CallerFilePath] string here = "") =>
        System.IO.Path.GetFullPath(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(here)!, "..", ".."));
}
