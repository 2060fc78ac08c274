using NcLanguage.Checks.Analysis;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;

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
}
