using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>Runs a program as the control does and holds every move's least distance, and the findings, against dense sampling of the moves.</summary>
sealed class SampledRun
{
    /// <summary>What distances and places may differ by, mm.</summary>
    public const double Agreement = 0.01;

    static readonly string[] Contacts = ["rapid-hits-obstacle", "cut-hits-obstacle", "holder-hits", "hop-hits-obstacle", "hole-under-obstacle"];

    readonly Fixture _fixture;
    readonly ProgramAnalysis _analysis;
    readonly Dictionary<int, SampledTool> _tools;
    readonly string _failure;

    SampledRun(string program, Fixture fixture, string readings, string failure)
    {
        _fixture = fixture;
        _tools = fixture.Tools.ToDictionary(tool => tool.Number, tool => new SampledTool(tool));
        _analysis = Programs.Analyse(program, fixture.Json(), readings: readings);
        _failure = $"{failure} ({readings})\n{fixture.Json()}\n{program}";
    }

    /// <summary>Moves that were compared, and those of them that touch something.</summary>
    public int Moves { get; private set; }

    public int Touching { get; private set; }

    /// <param name="failure">What a failure is to say first: the seed.</param>
    public static SampledRun Compare(string program, Fixture fixture, string readings, string failure)
    {
        var run = new SampledRun(program, fixture, readings, failure);
        run.Compare();
        return run;
    }

    void Compare()
    {
        var told = _analysis.Findings.Where(finding => Contacts.Contains(finding.Name)).Select(finding => finding.Line).ToHashSet();
        var touched = new HashSet<int>();
        var job = _analysis.Main.Job;
        var runner = new FlowRunner(job.Executor, FlowText.Of(_analysis.Text, null), null, job.MostBlocks);
        while (runner.MoveNext())
        {
            if ((runner.Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) != 0)
                continue;
            foreach (ref readonly var move in runner.Step.Moves.Items)
            {
                if (!move.IsMotion)
                    continue;
                // Where the first move comes from is not known.
                if (!move.From.IsKnown && Moves == 0)
                {
                    if (SampledDistance.Of(move.To + runner.Step.ToFrame, _tools[runner.Step.After.Tool], _fixture.Obstacles) <= Agreement)
                        touched.Add(runner.Line);
                    continue;
                }
                Assert.True(move.From.IsKnown && move.To.IsKnown && runner.Step.ToFrame.IsKnown, $"line {runner.Line + 1} is not known: {_failure}");
                if (Compare(move, runner.Step, job, out var entered) <= Agreement)
                    touched.Add(runner.Line);
                if (entered)
                    Assert.True(told.Contains(runner.Line) || IsToldOfAnother(runner.Line), $"no finding at line {runner.Line + 1} of a contact by {Describe(move)}: {_failure}");
            }
        }
        Assert.Equal(FlowEnd.Ended, runner.End);
        foreach (var line in told)
            Assert.True(touched.Contains(line), $"a finding at line {line + 1}, where nothing touches: {_failure}");
    }

    /// <summary>True where a hole before it in the same run stands for this one too, and says so.</summary>
    bool IsToldOfAnother(int line)
    {
        var table = HoleTable.Of(_analysis.Main);
        var (hole, count) = table.At(line);
        if (count == 0)
            return false;
        var (first, _) = table.RunOf(hole);
        return _analysis.Findings.Any(finding => finding.Message.Contains("The same goes for", StringComparison.Ordinal)
            && finding.Name == "holder-hits" && table.At(finding.Line) is { Count: > 0 } other && other.First >= first && other.First < hole);
    }

    /// <summary>The least distance as sampled.</summary>
    /// <param name="entered">Whether the move goes more than the agreement into something that it does not touch at its start.</param>
    double Compare(in Move move, Step step, Job job, out bool entered)
    {
        var tool = _tools[step.After.Tool];
        var path = new SampledPath(move, step.ToFrame, job.Machine);
        var sampled = path.Least(place => SampledDistance.Of(place, tool, _fixture.Obstacles));
        var found = job.ApproachOf(move, step.ToFrame, step.After.Tool, double.PositiveInfinity);
        var where = $"{Describe(move)}: {_failure}";
        Assert.True(Math.Abs(found.Distance - sampled) <= Agreement, string.Create(CultureInfo.InvariantCulture, $"{found.Distance} but sampled {sampled}, {where}"));

        // The place lies on the way and is as near as told, to the obstacle told, with the part told.
        Assert.True(path.Off(found.Tip) <= Agreement, $"{found.Tip} lies off the way of {where}");
        var there = SampledDistance.Of(found.Tip, tool, _fixture.Obstacles[found.ObstacleIndex]);
        Assert.True(Math.Abs(found.Distance - there) <= Agreement, string.Create(CultureInfo.InvariantCulture, $"{found.Distance} but {there} at {found.Tip}, {where}"));
        var part = SampledTool.PartOf(_fixture.Tools[step.After.Tool - 1], found.Part);
        Assert.True(Math.Abs(found.Distance - SampledDistance.Of(found.Tip, part, _fixture.Obstacles[found.ObstacleIndex])) <= Agreement, $"{found.Part} is not nearest on {where}");

        Moves++;
        entered = false;
        if (sampled > -Agreement)
            return sampled;
        Touching++;
        foreach (var obstacle in _fixture.Obstacles)
            entered |= SampledDistance.Of(path.Start, tool, obstacle) > Agreement && path.Least(place => SampledDistance.Of(place, tool, obstacle)) < -Agreement;
        return sampled;
    }

    static string Describe(in Move move) => $"the {move.Kind} ({move.Role}) from {move.From} to {move.To}";
}
