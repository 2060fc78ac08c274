using System.Text;
using System.Text.Json;
using Json.Schema;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Tests.Schema;

/// <summary>What the schema says of a file (by an outside validator, JsonSchema.Net) and what the reader says.</summary>
sealed class SchemaVerdict
{
    static readonly JsonSchema SetupSchema = JsonSchema.FromText(Schemas.Setup);
    static readonly JsonSchema MachineSchema = JsonSchema.FromText(Schemas.Machine);
    static readonly JsonSchema CuttingSchema = JsonSchema.FromText(Schemas.Cutting);
    static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    // What a schema cannot say: one value against another.
    static readonly string[] Relations =
        ["is above its max", "is above its greatest", "is above its top", "is listed already", "lies wholly inside the stock", "whole length is only", "has no size in", "is not below the stock's top", "lies beside the stock", "is more than half its width"];

    SchemaVerdict(bool isValid, IReadOnlyList<SetupProblem> problems) => (IsValid, Problems) = (isValid, problems);

    /// <summary>What the schema says.</summary>
    public bool IsValid { get; }

    /// <summary>What the reader says.</summary>
    public IReadOnlyList<SetupProblem> Problems { get; }

    /// <summary>The reader's problems that a schema could state as well.</summary>
    public IEnumerable<SetupProblem> SingleValueProblems =>
        Problems.Where(problem => !Relations.Any(part => problem.Message.Contains(part, StringComparison.Ordinal)));

    public static SchemaVerdict OfSetup(string text) => new(Evaluate(SetupSchema, text), SetupFile.Read("a.setup.json", Encoding.UTF8.GetBytes(text)).Problems);

    public static SchemaVerdict OfMachine(string text) =>
        new(Evaluate(MachineSchema, text), MachineFile.Read("a.machine.json", Encoding.UTF8.GetBytes(text), _ => MachineProfile.IsoMill).Problems);

    public static SchemaVerdict OfCutting(string text) =>
        new(Evaluate(CuttingSchema, text), CuttingFile.Read("nc.cutting.json", Encoding.UTF8.GetBytes(text), null).Problems);

    static bool Evaluate(JsonSchema schema, string text)
    {
        using var document = JsonDocument.Parse(text, Lenient);
        return schema.Evaluate(document.RootElement).IsValid;
    }
}
