using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.MotionView;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.MotionView;

/// <summary>A program with what the motion view makes of it.</summary>
sealed partial class Example
{
    readonly Job _job;

    Example(string path, string text, Job job)
    {
        (Path, Text, _job) = (path, SourceText.From(Encoding.UTF8.GetBytes(text)), job);
        Recording = MotionRecording.Create(path, Text, job, default);
    }

    public string Path { get; }

    public SourceText Text { get; }

    public MotionRecording Recording { get; }

    /// <summary>A plate under one clamp, an end mill of 6 mm as tool 1.</summary>
    public static Setup Plate { get; } = new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(0, 0, -10), new Point3(100, 60, 0)),
        Obstacles = [new BoxObstacle("clamp A", new Box3(new Point3(40, -10, 0), new Point3(60, 20, 20)))],
        ObstaclesAreListed = true,
        Tools = [new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = 6, FluteLength = 20, Length = 80, HolderDiameter = 40, HolderGauge = 40 }],
    };

    public static Example Of(string text, Setup? setup = null, MachineProfile? machine = null) =>
        new("part.nc", text, new Job(machine ?? MachineProfile.IsoMill, setup ?? Setup.None));

    /// <summary>A program of the disk with the setup, machine and called programs beside it.</summary>
    public static Example FromDisk(string path)
    {
        var inputs = JobFiles.Resolve(path, System.IO.Path.GetDirectoryName(path), DiskFiles.Instance, JobOptions.None);
        return new Example(path, File.ReadAllText(path), new Job(inputs.Machine, inputs.Setup, programs: new SiblingPrograms(path, DiskFiles.Instance)));
    }

    public static string Repository(params string[] parts) => System.IO.Path.Combine([Find(), .. parts]);

    /// <summary>The page as an HTML text.</summary>
    public string Page(string? nonce = null) => Encoding.UTF8.GetString(MotionPage.Write(Recording, nonce: nonce));

    /// <summary>What stands in the page for its script to read.</summary>
    public JsonElement PageData() => DataOf(Page());

    /// <summary>The same of a page that was written.</summary>
    public static JsonElement DataOf(string page) => JsonDocument.Parse(DataOf().Match(page).Groups[1].Value).RootElement;

    /// <summary>What <c>trace --format json</c> writes.</summary>
    public JsonElement Trace()
    {
        using var output = new MemoryStream();
        using (var json = new Utf8JsonWriter(output))
            TraceJson.Write(Path, Text, _job, json, default);
        return JsonDocument.Parse(output.ToArray()).RootElement;
    }

    static string Find([CallerFilePath] string here = "") =>
        System.IO.Path.GetFullPath(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(here)!, "..", "..", ".."));

    [GeneratedRegex("<script type=\"application/json\" id=\"motion\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex DataOf();
}
