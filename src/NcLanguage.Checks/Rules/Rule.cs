using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks;

/// <summary>One thing that can be wrong with a program. Each rule is one class in one file; it keeps no state between calls.</summary>
public abstract class Rule
{
    public abstract RuleInfo Info { get; }

    /// <summary>The events that <see cref="CheckStep"/> wants to see; a step with none of them is not shown to it. None: not called.</summary>
    public virtual StepEvents Interest => StepEvents.None;

    /// <summary>The same for one job, where it hangs on the job what there is to be found.</summary>
    public virtual StepEvents InterestIn(Job job) => Interest;

    /// <summary>Looks at the text of a block, whether it runs or not. Called for rules with <see cref="ReadsText"/>.</summary>
    public virtual void CheckText(in BlockContext block)
    {
    }

    /// <summary>Whether <see cref="CheckText"/> is to be called.</summary>
    public virtual bool ReadsText => false;

    /// <summary>Whether it can find anything in this job at all; false where what it looks at is not there. Then it is shown no step.</summary>
    public virtual bool Concerns(Job job) => true;

    /// <summary>Looks at one executed block.</summary>
    public virtual void CheckStep(in StepContext step)
    {
    }

    /// <summary>Whether a finding tells at how many of its block's runs it holds: not where what is wrong is wrong in the text, or in the run itself.</summary>
    public bool CountsRuns => !Info.Id.StartsWith("NC1", StringComparison.Ordinal) && !Info.Id.StartsWith("NC6", StringComparison.Ordinal);

    /// <summary>Whether its fixes look at all runs of the blocks that they change, and not only at the one that showed the finding.</summary>
    public virtual bool MendsAllRuns => false;

    /// <summary>Whether <see cref="CheckFile"/> is to be called.</summary>
    public virtual bool ReadsFile => false;

    /// <summary>Whether what it finds in the whole file leaves no fix of the program sure.</summary>
    public virtual bool PutsFixesInDoubt => false;

    /// <summary>Whether what it finds in the whole file may be why another rule finds something: that is then told with it, and not by itself.</summary>
    public virtual bool MayExplain(Rule other) => false;

    /// <summary>Looks at the whole file, from the results of its parts: must not walk the blocks.</summary>
    public virtual void CheckFile(in FileContext file)
    {
    }

    /// <summary>The fixes for one of this rule's findings, best first.</summary>
    public virtual IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) => [];
}
