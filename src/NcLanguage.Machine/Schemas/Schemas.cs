using System.Text;

namespace NcLanguage.Machine;

/// <summary>The JSON Schemas (draft 2020-12) of the files a user keeps beside programs, as carried in the executable.</summary>
public static class Schemas
{
    static readonly Lazy<string> LazySetup = new(() => Load("setup.schema.json"));
    static readonly Lazy<string> LazyMachine = new(() => Load("machine.schema.json"));
    static readonly Lazy<string> LazyCutting = new(() => Load("cutting.schema.json"));

    /// <summary>The schema of setup files.</summary>
    public static string Setup => LazySetup.Value;

    /// <summary>The schema of machine files.</summary>
    public static string Machine => LazyMachine.Value;

    /// <summary>The schema of files of cutting data.</summary>
    public static string Cutting => LazyCutting.Value;

    static string Load(string name)
    {
        using var stream = typeof(Schemas).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The schema {name} is not in this build.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
