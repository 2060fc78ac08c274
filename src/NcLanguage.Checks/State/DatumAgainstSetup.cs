using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A datum that a program writes with a slip in its number.</summary>
public sealed class DatumAgainstSetup : Rule
{
    /// <summary>Numbers are alike that differ by less, mm: what rounding to three decimals leaves.</summary>
    const double Rounding = 0.001;

    /// <summary>Of a number of the setup that is smaller, mm, it says nothing that it comes with another sign.</summary>
    const double LeastNumber = 1;

    /// <summary>Blocks with G10 that are looked at.</summary>
    const int MostBlocks = 200;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2037",
        Name = "datum-against-setup",
        Severity = Severity.Error,
        Title = "A datum is written with a slip in its number, or as another work offset's",
        Finds = "G10 L2, before the first move, for a work offset that stands in the setup's workOffsets. Told are numbers with another sign than there, or ten, a hundred or a thousand times as large or as small, where all others of the "
            + "block agree; numbers that are all 0 where the setup's are not, if nothing else writes a datum: L20 may have been meant; and two numbers or more that are those of another work offset of the setup. Once for each block; what else is found of places, depths and travel is counted and named with it, and told by itself when the datum is settled, or this finding silenced.",
        AtTheMachine = "All that follows under this work offset runs beside the part: into its clamps, the table or the end of the travel.",
        Setup = """
            { "workOffsets": { "G54": [-300, -180, -250] } }
            """,
        Example = """
            G21 G90 G17 G54
            G10 L2 P1 X300 Y-180 Z-250
            ~         ^^^^
            G0 X10 Y10
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G10 L2 P1 X-300 Y-180 Z-250
            G0 X10 Y10
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the setup's number, L20, or the P of the work offset whose numbers they are. Where the setup is wrong, it is this that has to change.",
        NotFound = "Datums that differ otherwise: the setup may be older than the program. Work offsets that the program writes more than once, or behind a move, but for zeros: a second place may be meant. "
            + "G10 in distances (G91), by where the tool stands (L20) or with worked-out numbers, and blocks with G10 behind the first 200.",
        Source = "NISTIR 6556 §3.5.5; that a sign or a digit of a datum is lost: common practice.",
    };

    public override bool ReadsFile => true;

    // Levels and places that another rule would write are counted from the datum.
    public override bool PutsFixesInDoubt => true;

    public override bool MayExplain(Rule other) => HangsOnDatum.Is(other);

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (run.Job.Setup.WorkOffsets.IsEmpty)
            return;
        var written = new List<(int System, int Line, List<Slip> Slips, int Other)>();
        var count = 0;
        for (int line = run.FirstSetter(Slot.OffsetData), before = -1, blocks = 0; line >= 0 && run.OrderOf(line) > before && blocks < MostBlocks; line = run.FirstSetter(Slot.OffsetData, line), blocks++)
        {
            before = run.OrderOf(line);
            count++;
            var step = run.StepAt(line);
            if (step.Words.HasCode('G', 100) && step.Words['L'] == 2 && step.Words['P'] is >= 1 and <= 9 and var system)
                written.Add(((int)system, line, SlipsOf(run, line, step, SystemVariables.OfSystem((int)system)), OtherOf(run, line, step, (int)system)));
        }
        foreach (var (system, line, slips, other) in written)
            if (other > 0)
                TellOther(file, line, SystemVariables.OfSystem(system), other);
            else if (count == 1 && ZerosOf(run, line, SystemVariables.OfSystem(system)) is { Count: > 0 } zeros)
                TellZeros(file, line, SystemVariables.OfSystem(system), zeros);
            else if (slips.Count > 0 && written.FindAll(again => again.System == system).Count == 1)
                Tell(file, line, SystemVariables.OfSystem(system), slips);
    }

    /// <summary>The numbers of a datum that are the setup's with a slip; none where others differ otherwise.</summary>
    static List<Slip> SlipsOf(ProgramRun run, int line, Step step, int workOffset)
    {
        var slips = new List<Slip>();
        if (!run.Job.Setup.WorkOffsets.TryGetValue(workOffset, out var datum) || step.After.Distance != DistanceMode.Absolute || (step.Before.Happened & Happened.WorkMove) != 0)
            return slips;
        var unit = UnitLength.Of(step.After.Units);
        var block = run.BlockAt(line);
        var agrees = false;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (!step.Words.Has(letter))
                continue;
            ref readonly var token = ref block.Tokens[step.Words.TokenOf(letter)];
            var (number, meant) = (step.Words[letter] * unit, datum[axis]);
            if (Math.Abs(number - meant) <= Rounding)
                agrees = true;
            else if (IsSlip(number, meant) && block.Line[token.Start..token.End].IndexOfAny("[#"u8) < 0)
                slips.Add(new Slip(step.Words.TokenOf(letter), Quote.Word(block, token), letter + Say.Number(meant / unit, 4), Math.Abs(number - meant)));
            else
                return [];
        }
        return agrees ? slips : [];
    }

    /// <summary>The P of the other work offset whose datum a block writes, two numbers of it at least; 0 where there is none, or more than one.</summary>
    static int OtherOf(ProgramRun run, int line, Step step, int system)
    {
        if (step.After.Distance != DistanceMode.Absolute || (step.Before.Happened & Happened.WorkMove) != 0 || !run.Job.Setup.WorkOffsets.TryGetValue(SystemVariables.OfSystem(system), out var own) || Agrees(own) > 0)
            return 0;
        var found = 0;
        for (var other = 1; other <= 9; other++)
            if (other != system && run.Job.Setup.WorkOffsets.TryGetValue(SystemVariables.OfSystem(other), out var datum) && Agrees(datum) >= 2)
                found = found == 0 ? other : -1;
        return Math.Max(found, 0);

        // How many numbers of the block are a datum's; −1 where one is not. A datum at another one's X, Y or Z is no other.
        int Agrees(in Point3 datum)
        {
            var (unit, count) = (UnitLength.Of(step.After.Units), 0);
            for (var axis = 0; axis < 3; axis++)
                if (step.Words.Has((char)('X' + axis)))
                {
                    if (!(Math.Abs(step.Words[(char)('X' + axis)] * unit - datum[axis]) <= Rounding))
                        return -1;
                    count++;
                }
            return count;
        }
    }

    /// <summary>The numbers of a datum where all are 0 and the setup has it elsewhere along each of these axes: what L20, by which a number says where the tool stands, is written with.</summary>
    static List<Slip> ZerosOf(ProgramRun run, int line, int workOffset)
    {
        var zeros = new List<Slip>();
        var step = run.StepAt(line);
        if (!run.Job.Setup.WorkOffsets.TryGetValue(workOffset, out var datum) || step.After.Distance != DistanceMode.Absolute)
            return zeros;
        var unit = UnitLength.Of(step.After.Units);
        var block = run.BlockAt(line);
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (!step.Words.Has(letter))
                continue;
            ref readonly var token = ref block.Tokens[step.Words.TokenOf(letter)];
            if (step.Words[letter] != 0 || !(Math.Abs(datum[axis]) > LeastNumber) || block.Line[token.Start..token.End].IndexOfAny("[#"u8) >= 0)
                return [];
            zeros.Add(new Slip(step.Words.TokenOf(letter), letter + "0", letter + Say.Number(datum[axis] / unit, 4), Math.Abs(datum[axis])));
        }
        return zeros;
    }

    /// <summary>Whether a number is another with another sign, or with its point elsewhere.</summary>
    static bool IsSlip(double number, double meant)
    {
        if (Math.Abs(meant) <= LeastNumber)
            return false;
        if (Math.Abs(number + meant) <= Rounding)
            return true;
        for (var power = 10; power <= 1000; power *= 10)
            if (Math.Abs(number * power - meant) <= Rounding * power || Math.Abs(number - meant * power) <= Rounding * power)
                return true;
        return false;
    }

    void Tell(in FileContext file, int line, int workOffset, List<Slip> slips)
    {
        var block = file.Run.BlockAt(line);
        var (written, meant) = (string.Join(' ', slips.Select(slip => slip.Written)), string.Join(' ', slips.Select(slip => slip.Meant)));
        var (first, last) = (slips.Min(slip => slip.Token), slips.Max(slip => slip.Token));
        file.Report(this, line, block.Tokens[first].Start, block.Tokens[last].End,
            $"This puts the datum of {WorkOffsetName.Format(workOffset)} to {written}, and the setup has it at {meant}: what follows under it runs {file.SayAt(line, null).Length(slips.Max(slip => slip.Off))} beside its place.", text: meant);
    }

    void TellZeros(in FileContext file, int line, int workOffset, List<Slip> zeros)
    {
        var block = file.Run.BlockAt(line);
        var (written, meant) = (string.Join(' ', zeros.Select(zero => zero.Written)), string.Join(' ', zeros.Select(zero => zero.Meant)));
        file.Report(this, line, block.Tokens[zeros.Min(zero => zero.Token)].Start, block.Tokens[zeros.Max(zero => zero.Token)].End,
            $"L2 puts the datum of {WorkOffsetName.Format(workOffset)} to the machine's own {written}, and the setup has it at {meant}; L20 would make {written} of where the tool stands.", text: "L20");
    }

    void TellOther(in FileContext file, int line, int workOffset, int other)
    {
        var block = file.Run.BlockAt(line);
        var (p, meant) = (block.IndexOf('P'), SystemVariables.OfSystem(other));
        file.Report(this, line, block.Tokens[p].Start, block.Tokens[p].End,
            $"{Quote.Word(block, block.Tokens[p])} is {WorkOffsetName.Format(workOffset)}, and the numbers are those that the setup has for {WorkOffsetName.Format(meant)}: is P{other} meant?", text: $"P{other}");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var block = analysis.Main.BlockAt(finding.Line);
        var edits = new List<Edit>();
        foreach (var word in finding.Text.Split(' '))
            if (block.IndexOf(word[0]) is var token and >= 0)
                edits.Add(WordEdits.Replace(finding.Line, block, token, word));
        return [new Fix($"Write {finding.Text}", FixSafety.Choice, [.. edits])];
    }

    /// <summary>A number of a datum with a slip.</summary>
    /// <param name="Token">Its word's place in the block.</param>
    /// <param name="Written">The word as it stands there.</param>
    /// <param name="Meant">The word with the setup's number.</param>
    /// <param name="Off">How far they are apart, mm.</param>
    readonly record struct Slip(int Token, string Written, string Meant, double Off);
}
