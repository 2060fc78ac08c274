using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>
/// What <c>check --format sarif</c> writes, held against the JSON Schema of SARIF 2.1.0 by the OASIS technical committee, as the npm package
/// @microsoft/jest-sarif 1.0.0-beta.0 carries it (file sarif-2.1.0-rtm.5.json). It is written in draft 4, and says nothing that draft 7 reads otherwise.
/// </summary>
public sealed class SarifTests
{
    static readonly JsonSchema Schema = Read();

    [Fact]
    public void The_log_of_the_demonstration_is_valid()
    {
        using var scratch = new Scratch();
        Command.Run("demo", scratch.At("demo"));
        var log = Command.In(scratch.Folder, "check", "demo", "--format", "sarif", "--portable");
        Assert.True(JsonNode.Parse(log.Output)!["runs"]![0]!["results"]!.AsArray().Count > 10);
        Assert.Equal("", FaultsOf(JsonNode.Parse(log.Output)!));
    }

    [Fact]
    public void The_log_of_a_file_that_cannot_be_read_and_of_a_sound_program_is_valid()
    {
        using var scratch = new Scratch();
        scratch.Write("a b.nc", Samples.Sound);
        scratch.Write("é.nc", Samples.WithError);
        scratch.Write("part.setup.json", "{");
        scratch.Write("part.nc", Samples.Sound);
        var log = Command.In(scratch.Folder, "check", ".", "--format", "sarif");
        Assert.Equal("", FaultsOf(JsonNode.Parse(log.Output)!));
    }

    [Fact]
    public void A_log_with_a_fault_is_not()
    {
        var log = JsonNode.Parse(Command.Run(folder: null, input: null, ["schema", "setup"]).Output)!;
        Assert.NotEqual("", FaultsOf(log));
        using var scratch = new Scratch();
        scratch.Write("part.nc", Samples.WithError);
        var changed = JsonNode.Parse(Command.In(scratch.Folder, "check", ".", "--format", "sarif").Output)!;
        Assert.Equal("", FaultsOf(changed));
        changed["runs"]![0]!["results"]![0]!["level"] = "fatal";
        Assert.Contains("level", FaultsOf(changed), StringComparison.Ordinal);
    }

    static string FaultsOf(JsonNode log)
    {
        var results = Schema.Evaluate(JsonSerializer.SerializeToElement(log), new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid ? "" : string.Join("; ", (results.Details ?? []).Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")).Distinct().Take(10)) + " ";
    }

    static JsonSchema Read()
    {
        using var stream = typeof(SarifTests).Assembly.GetManifestResourceStream("sarif.schema.json")!;
        var schema = JsonNode.Parse(stream)!.AsObject();
        schema["$schema"] = "http://json-schema.org/draft-07/schema#";
        schema.Remove("id");
        return JsonSchema.FromText(schema.ToJsonString());
    }
}
