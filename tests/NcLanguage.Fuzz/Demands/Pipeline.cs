using NcLanguage.Checks.Analysis;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A program through all rooms of the house, one after the other.</summary>
static class Pipeline
{
    /// <summary>Runs of a program that an analysis makes at most: the reading in force, block skip the other way, two other readings.</summary>
    const int MostRuns = 4;

    /// <summary>Text, run, findings, and all that an editor asks.</summary>
    public static void CheckAnswers(FuzzCase of)
    {
        var job = new CaseJob(of);
        TextDemands.Lossless(job.Text, of.Program);
        var analysis = Analyse(job);
        FindingDemands.Sound(analysis);
        OtherReadings(job, analysis);
        EditorDemands.Answers(job, analysis, new Dice(of.Program.Length));
    }

    /// <summary>All that is written out.</summary>
    public static void CheckReports(FuzzCase of)
    {
        var job = new CaseJob(of);
        ReportDemands.Written(job, Analyse(job));
    }

    static ProgramAnalysis Analyse(CaseJob job)
    {
        var analysis = job.Analyse();
        var most = MostRuns * (CaseJob.MostBlocks + 2 * job.Text.LineCount + 2);
        Demand.That(analysis.BlocksRun <= most, "a run comes to its end", () => $"{analysis.BlocksRun} blocks, not {most}");
        return analysis;
    }

    /// <summary>A run under another reading comes out as it does where that reading is in force, though it takes from the first run what is alike.</summary>
    static void OtherReadings(CaseJob job, ProgramAnalysis analysis)
    {
        var (runs, machine) = (analysis.Runs, analysis.Machine);
        AsAlone(runs.OtherSkip, job.Options with { Skip = !job.Options.Skip }, machine);
        AsAlone(runs.OtherPositions, job.Options, ReadingSwitch.Positions(machine));
        AsAlone(runs.OtherReturns, job.Options, ReadingSwitch.Returns(machine));

        void AsAlone(ProgramRun? beside, AnalysisOptions options, MachineProfile machine)
        {
            if (beside is null)
                return;
            var alone = ProgramAnalysis.Create(job.Text, job.Inputs.Setup, machine, options).Main;
            Demand.Equal(alone.Results.Length, beside.Results.Length, "parts of another reading as alone");
            for (var i = 0; i < alone.Results.Length; i++)
            {
                Demand.Equal(alone.Results[i].Exit, beside.Results[i].Exit, "the state under another reading as alone");
                Demand.Same(HolesOf(alone.Results[i]), HolesOf(beside.Results[i]), "holes under another reading as alone");
                if (ReferenceEquals(beside, runs.OtherSkip))
                    Demand.Same([.. alone.Results[i].Findings], [.. beside.Results[i].Findings], "findings where blocks are skipped as alone");
            }
        }

        // Where only holes are asked for, cuts are not counted.
        static HoleResult[] HolesOf(PartResult part) => [.. part.Holes.Select(hole => hole with { CutsBefore = 0 })];
    }
}
