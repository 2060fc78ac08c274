using System.Collections.Immutable;
using NcLanguage.Fuzz.Demands;
using NcLanguage.Fuzz.Running;
using NcLanguage.Fuzz.Writing;

namespace NcLanguage.Fuzz;

/// <summary>The checks, by the names that kept cases know them by.</summary>
static class AllChecks
{
    public static ImmutableArray<Fuzzer> All { get; } =
    [
        new("answers", Programs.Any, Pipeline.CheckAnswers),
        new("reports", Programs.Any, Pipeline.CheckReports),
        new("edits", Edits.Of, EditDemands.Check),
        new("fixes", Programs.Near, FixDemands.Check),
        new("jobFiles", JobFileTexts.Of, JobFileDemands.Check),
        new("refactorings", Programs.Near, RefactoringDemands.Check),
    ];

    public static Fuzzer Named(string name) => All.First(check => check.Name == name);
}
