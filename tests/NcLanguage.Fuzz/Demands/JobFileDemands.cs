using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using NcLanguage.Editing;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Machine;
using NcLanguage.Machine.Loading;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A setup, machine or cutting file, however wrong, gives a job or mistakes with their places; nothing that is wrong is passed over, and what is not wrong is taken.</summary>
static class JobFileDemands
{
    /// <summary>Values of a sound file that are changed, to see that each is taken or told.</summary>
    const int MostChanges = 5;

    static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    static readonly (string Path, JobFileKind Kind, JsonSchema Schema)[] Kinds =
    [
        (CaseJob.SetupPath, JobFileKind.Setup, JsonSchema.FromText(Schemas.Setup)),
        (CaseJob.MachinePath, JobFileKind.Machine, JsonSchema.FromText(Schemas.Machine)),
        (CaseJob.CuttingPath, JobFileKind.Cutting, JsonSchema.FromText(Schemas.Cutting)),
    ];

    public static void Check(FuzzCase of)
    {
        var job = new CaseJob(of);
        var dice = new Dice((of.Setup?.Length ?? 0) + (of.Machine?.Length ?? 0));
        foreach (var problem in job.Inputs.Problems)
        {
            var kind = Array.Find(Kinds, kind => kind.Path == problem.Path);
            Demand.That(kind.Path is not null, "a mistake is told of a file that was read", () => problem.ToString());
            InFile(problem, FileOf(of, kind.Kind)!);
        }
        foreach (var (path, kind, schema) in Kinds)
        {
            if (FileOf(of, kind) is not { } bytes)
                continue;
            // Where the setup names another machine, or stands in for none, the file beside it is not read.
            var isRead = kind != JobFileKind.Machine || (job.Inputs.Setup.Machine is null && job.Inputs.LookedAt.Contains(path));
            if (isRead)
                ToldOrTaken(of, job, path, kind, schema, bytes, dice);
            Asked(kind, bytes, dice);
        }
        var analysis = job.Analyse();
        FindingDemands.Sound(analysis);
        if (dice.OneIn(8))
            ReportDemands.Written(job, analysis);
    }

    static byte[]? FileOf(FuzzCase of, JobFileKind kind) => kind switch { JobFileKind.Setup => of.Setup, JobFileKind.Machine => of.Machine, _ => of.Cutting };

    static FuzzCase WithFile(FuzzCase of, JobFileKind kind, byte[] bytes) => kind switch
    {
        JobFileKind.Setup => of with { Setup = bytes },
        JobFileKind.Machine => of with { Machine = bytes },
        _ => of with { Cutting = bytes },
    };

    static void InFile(SetupProblem problem, byte[] bytes)
    {
        var lines = Encoding.UTF8.GetString(bytes).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n', '\r');
        var holds = problem.Line >= 1 && problem.Line <= problem.EndLine && problem.EndLine <= lines.Length && problem.Column >= 1 && problem.Column <= lines[problem.Line - 1].Length + 2
            && (problem.EndLine > problem.Line || problem.EndColumn >= problem.Column);
        Demand.That(holds, $"a mistake has a place in its file: {problem.Name}", () => $"{problem} of {lines.Length} lines");
        // What stands in the file is quoted, whatever it is.
        Demand.That(problem.Message.Length > 0 && problem.Message.AsSpan().IndexOfAny('\r', '\n') < 0, $"a mistake is told in one line: {problem.Name}", () => problem.Message);
    }

    /// <summary>What an outside reader or the schema finds wrong is told; of a file without mistakes every value counts.</summary>
    static void ToldOrTaken(FuzzCase of, CaseJob job, string path, JobFileKind kind, JsonSchema schema, byte[] bytes, Dice dice)
    {
        var isTold = job.Inputs.Problems.Any(problem => problem.Path == path);
        var body = bytes.AsMemory(bytes.AsSpan().StartsWith("\uFEFF"u8) ? 3 : 0);
        try
        {
            using var document = JsonDocument.Parse(body, Lenient);
            Demand.That(isTold || schema.Evaluate(document.RootElement).IsValid, $"what the schema does not allow is told: {kind}");
        }
        catch (JsonException)
        {
            Demand.That(isTold, $"what is no JSON is told: {kind}");
            return;
        }
        catch (InvalidOperationException)
        {
            // A text that is no text; the schema cannot look at it.
            Demand.That(isTold, $"what is no text is told: {kind}");
            return;
        }
        if (isTold)
            return;
        var root = JsonNode.Parse(body.Span, null, Lenient)!;
        var leaves = Leaves(root).Where(leaf => !leaf.GetPath().StartsWith("$.$schema", StringComparison.Ordinal)).ToList();
        var before = Described.Of((job.Inputs.Setup, job.Inputs.Machine));
        for (var times = Math.Min(MostChanges, leaves.Count); times > 0; times--)
        {
            var leaf = dice.Of(leaves);
            var at = leaf.GetPath();
            var other = Changed(leaf, dice);
            var copy = root.DeepClone();
            var changed = Leaves(copy).First(node => node.GetPath() == at);
            changed.ReplaceWith(other);
            var again = new CaseJob(WithFile(of, kind, Encoding.UTF8.GetBytes(copy.ToJsonString())));
            Demand.That(!again.Inputs.Problems.IsEmpty || Described.Of((again.Inputs.Setup, again.Inputs.Machine)) != before, $"a value counts or is told: {kind}",
                () => $"{at}: {leaf.ToJsonString()} became {other.ToJsonString()}");
        }
    }

    static IEnumerable<JsonValue> Leaves(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(member => Leaves(member.Value)),
        JsonArray items => items.SelectMany(Leaves),
        JsonValue value => [value],
        _ => [],
    };

    static JsonNode Changed(JsonValue leaf, Dice dice) => leaf.GetValueKind() switch
    {
        JsonValueKind.Number => JsonValue.Create(leaf.GetValue<double>() + dice.Of([1, -1, 0.375])),
        JsonValueKind.True => JsonValue.Create(false),
        JsonValueKind.False => JsonValue.Create(true),
        _ => JsonValue.Create(leaf.GetValue<string>() + "x"),
    };

    /// <summary>What an editor asks at any place of the file.</summary>
    static void Asked(JobFileKind kind, byte[] bytes, Dice dice)
    {
        var text = SourceText.From(bytes);
        for (var times = 4; times > 0; times--)
        {
            var offset = dice.Below(bytes.Length + 1);
            var items = JobFileAnswers.Completion(kind, text, offset);
            Demand.That(items.Items.Count == 0 || (items.Start >= 0 && items.Start <= items.End && items.End <= bytes.Length), $"an offer lies in the file: {kind}", () => $"{items.Start} to {items.End} of {bytes.Length}");
            if (JobFileAnswers.Hover(kind, text, offset) is { } hover)
                Demand.That(hover.Start >= 0 && hover.Start <= offset && hover.End <= bytes.Length && hover.Markdown.Length > 0, $"a hover lies in the file: {kind}", () => hover.ToString());
            JobFileAnswers.MachineNamed(kind, text, offset);
        }
    }
}
