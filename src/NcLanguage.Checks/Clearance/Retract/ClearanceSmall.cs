using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A move passes an obstacle nearer than the setup's clearance.</summary>
public sealed class ClearanceSmall : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4010",
        Name = "clearance-small",
        Severity = Severity.Warning,
        Title = "A move passes an obstacle nearer than the clearance",
        Finds = "A move that touches nothing but comes nearer to an obstacle than the setup's clearance; where the setup lists none, a traverse between two holes so "
            + "near above the clamp height.",
        AtTheMachine = "It passes, as long as the clamp stands where the setup says and nothing is bent or shimmed: a chip or a clamp set a little off makes it a crash.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G99 G81 X12 Y6 Z-8 R2 F180
            X60
            ~^^
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            G43 H3
            S1800 M3
            G0 X12 Y20 Z40
            M8
            G98 G81 X12 Y6 Z-8 R2 F180
            X60
            G80 G0 Z40
            M9
            M5
            M30
            """,
        Setup = HopExample.Setup,
        FixSafety = FixSafety.Safe,
        Fix = "For a traverse between two holes: writes G98 where it needs the initial level, for the whole run of holes. Exactly the clearance counts as clear.",
        NotFound = "Moves whose place is not known, and obstacles the setup does not list.",
        Source = "The clearance is the setup's own; common practice is 2 mm or more above what can be measured.",
    };

    const string OfHop = "hop";

    public override StepEvents Interest => StepEvents.Moves;

    public override void CheckStep(in StepContext step)
    {
        if (BlockHop.TryFindNearest(step, out var hop) && HopClearance.Of(step.Job, hop.Distance) == HopOutcome.Close)
        {
            hop.Report(this, step, OfHop);
            return;
        }
        if (Contact.FirstOf(ContactKind.Near, step) is not { } contact)
            return;
        step.ReportBlock(
            this, $"{ContactWords.Move(step.Step.Moves[contact.Move], step)} passes {contact.Obstacle.Name} at {Say.Mm(contact.Distance)}, nearer than the clearance of "
                + $"{Say.Mm(step.Job.Setup.Clearance)}: {ContactWords.Top(contact, step)}.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Text == OfHop ? HopFixes.Clear(finding, analysis) : [];
    }
}
