using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>The value of a word with its unit, and what follows from it.</summary>
readonly struct ValueText(ProgramAnalysis analysis, int line, Step step, WordUse? use)
{
    readonly Lengths _lengths = Lengths.Of(step.After);

    /// <summary>The text for the block's word of a letter.</summary>
    public string Of(char letter)
    {
        if (double.IsNaN(step.Words[letter]))
            return $"Its value is {Lengths.NotKnown}.";
        // The words of a call are handed over as they are written.
        if (step.Words.Find(ModalGroup.MacroCall) is { Code.TakesArguments: true } && CallArguments.NumberOf(letter) > 0)
            return $"{Say.Number(step.Words[letter], 6)}, a number without unit.";
        if (HasNoEffect(letter))
            return "Nothing in this block uses it.";
        return letter switch
        {
            'F' when use is null or { Unit: WordUnit.Feed } => CuttingText.Feed(analysis, step),
            'S' => CuttingText.Speed(analysis, step),
            'T' => ToolText.Of(analysis, step),
            'H' => ToolText.LengthOffset(analysis, step),
            'X' or 'Y' or 'Z' when use is not { Unit: WordUnit.Dwell } => Axis(letter),
            _ => ByUnit(letter),
        };
    }

    bool HasNoEffect(char letter)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.Kind == FaultKind.WordWithoutEffect && fault.Letter == letter)
                return true;
        return false;
    }

    // ---- axis words ---------------------------------------------------------------------------------------

    string Axis(char letter)
    {
        if (StepFacts.CycleOf(step) > 0 && letter == StepFacts.DepthLetter(step.After) && (step.Sets & Slot.CycleBottom) != 0)
            return Bottom(letter) + Behind(CarriedText.ForAxisWord(analysis, line, step));
        if (step.Words.HasCode('G', 530))
            return $"{_lengths.Length(Written(letter))} in machine coordinates.";
        if (step.Words.HasCode('G', 280) || step.Words.HasCode('G', 300))
            return Target(letter, OnTheWay(letter), step.After.Distance == DistanceMode.Incremental);
        if (ClaimsAxes(step))
            return _lengths.Length(Written(letter)) + ".";
        var index = letter - 'X';
        if (step.Holes.Count == 0)
            return Target(letter, step.After.Position[index], step.After.Distance == DistanceMode.Incremental) + Behind(CarriedText.ForAxisWord(analysis, line, step));
        var place = Place.OfHole(step, 0);
        var to = place.FirstLetter == letter ? place.First : place.Second;
        var always = analysis.Machine.Readings.HolePositions == HolePositionReading.Incremental;
        return Target(letter, to, always || step.After.Distance == DistanceMode.Incremental) + Behind(CarriedText.ForAxisWord(analysis, line, step));
    }

    /// <summary>Where an axis word leads, and how far that is from here.</summary>
    string Target(char letter, double to, bool isDistance)
    {
        if (double.IsNaN(to))
            return $"Where this leads is {Lengths.NotKnown}.";
        var from = step.Before.Position[letter - 'X'];
        var place = _lengths.Axis(letter, to) + (_lengths.IsInch ? $" ({Say.Number(to)} mm)" : "");
        var way = double.IsNaN(from) ? "" : Math.Abs(to - from) < 1e-9 ? "where the tool stands already" : $"{_lengths.Way(to - from)} from {_lengths.Axis(letter, from)}";
        var rule = step.Holes.Count > 0 && analysis.Machine.Readings.HolePositions == HolePositionReading.Incremental
            ? $"{Markdown.Plain(analysis.Machine.Name)} takes positions inside cycles as distances"
            : $"{(isDistance ? "G91" : "G90")} {StateText.Setter(analysis.Main.LastSetter(Slot.Distance, line))}";
        rule += Framed(letter);
        return isDistance
            ? $"{(way.Length > 0 ? way + ", " : "")}to {place} · {rule}."
            : $"To {place}{(way.Length > 0 ? ", " + way : "")} · {rule}.";
    }

    /// <summary>" · G68 (line 9)": the codes that make another place of an axis' word than it says.</summary>
    string Framed(char letter)
    {
        if (step.After.ProgramFrame is not { } frame)
            return "";
        var axis = letter - 'X';
        var (first, second, _) = Arcs.Axes(step.After.Plane);
        var isInPlane = axis == first || axis == second;
        return (frame.Polar is not null && isInPlane ? By("G16", Slot.Polar) : "")
            + (frame.Scaling is { } scaling && scaling.Factors[axis] != 1 ? By("G51", Slot.Scaling) : "")
            + (frame.Rotation is not null && isInPlane ? By("G68", Slot.Rotation) : "")
            + (frame.Mirror is { } mirror && mirror.IsOn(axis) ? By("G51.1", Slot.Mirror) : "");
    }

    string By(string code, Slot slot) => $" · {code} {StateText.Setter(analysis.Main.LastSetter(slot, line))}";

    string Bottom(char letter)
    {
        var below = step.After.RLevel - step.After.Bottom;
        return $"Bottom at {_lengths.Axis(letter, step.After.Bottom)}{(double.IsNaN(below) ? "" : $", {_lengths.Length(below)} below the R level {_lengths.Axis(letter, step.After.RLevel)}")}"
            + ". Carried over to the holes that follow.";
    }

    double OnTheWay(char letter)
    {
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Role == MoveRole.Machine)
                return move.To[letter - 'X'];
        return double.NaN;
    }

    static bool ClaimsAxes(Step step)
    {
        foreach (var word in step.Words.Codes)
            if (word.Code.Letter == 'G' && word.Code.Group is ModalGroup.NonModal or ModalGroup.Scaling or ModalGroup.Rotation or ModalGroup.Mirror or ModalGroup.MacroCall
                && word.Code.Words.Length > 0)
                return true;
        return false;
    }

    static string Behind(string text) => text.Length == 0 ? "" : "\n\n" + text;

    // ---- all others ---------------------------------------------------------------------------------------

    string ByUnit(char letter)
    {
        var cycle = StepFacts.CycleOf(step);
        return (use?.Unit, letter) switch
        {
            (WordUnit.Length, 'R') when cycle > 0 && (step.Sets & Slot.CycleR) != 0 => RLevel(),
            (WordUnit.Length, 'Q') when cycle is 73 or 83 => Peck(),
            (WordUnit.Length, 'I' or 'J' or 'K') when step.Moves.Count > 0 && step.Moves[step.Moves.Count - 1].Kind == MoveKind.Arc => Centre(letter),
            (WordUnit.Length, _) => _lengths.Length(Written(letter)) + ".",
            (WordUnit.Dwell, _) => Dwell(letter),
            (WordUnit.Degrees, _) => Say.Number(step.Words[letter]) + "°.",
            (WordUnit.Feed, _) => CuttingText.Feed(analysis, step),
            (WordUnit.Whole, 'L' or 'K') when step.Holes.Count > 1 => Repeats(),
            _ => "",
        };
    }

    string Repeats()
    {
        var (first, last) = (Place.OfHole(step, 0), Place.OfHole(step, step.Holes.Count - 1));
        return first.IsAt(last)
            ? $"{step.Holes.Count} times at the same place, {_lengths.Place(first)}{CoordinatesText.Behind(analysis.Main, step.After)}."
            : $"{step.Holes.Count} holes, from {_lengths.Place(first)} to {_lengths.Place(last)}{CoordinatesText.Behind(analysis.Main, step.After)}.";
    }

    /// <summary>Levels that differ by less are one, mm: lengths are told to a thousandth.</summary>
    const double LeastShown = 0.0005;

    string RLevel()
    {
        var depth = StepFacts.DepthLetter(step.After);
        var below = step.After.InitialLevel - step.After.RLevel;
        var relation = double.IsNaN(below) ? ""
            : Math.Abs(below) < LeastShown ? ", at the initial level"
            : $", {_lengths.Length(Math.Abs(below))} {(below < 0 ? "above" : "below")} the initial level {_lengths.Axis(depth, step.After.InitialLevel)}";
        return $"R level at {_lengths.Axis(depth, step.After.RLevel)}{relation}. Carried over to the holes that follow.";
    }

    string Peck()
    {
        // Feed strokes: the whole way by the peck, rounded up; a rest below what can be shown is no stroke.
        var depth = step.After.RLevel - step.After.Bottom;
        var strokes = Math.Ceiling(Math.Round(depth / step.After.Peck, 9));
        var told = double.IsFinite(strokes) && strokes > 0
            ? $": {Say.Number(strokes)} over {_lengths.Length(depth)}"
            : "";
        return $"{_lengths.Length(step.After.Peck)} a peck{told}. Carried over to the holes that follow.";
    }

    string Centre(char letter)
    {
        var axis = letter - 'I';
        var center = step.Moves[step.Moves.Count - 1].Center[axis];
        return $"{_lengths.Length(Written(letter))}: the centre is at {_lengths.Axis((char)('X' + axis), center)}.";
    }

    string Dwell(char letter)
    {
        var token = analysis.Main.BlockAt(line).Tokens[step.Words.TokenOf(letter)];
        var hasPoint = token.HasPoint || token.IsExpression;
        var seconds = DwellReadings.Seconds(letter, step.Words[letter], hasPoint, analysis.Machine.Readings);
        var reading = DwellReadings.IsMilliseconds(letter, hasPoint, analysis.Machine.Readings) ? "milliseconds" : "seconds";
        if (DwellReadings.IsByPoint(letter, analysis.Machine.Readings) && !token.IsExpression)
            reading = (hasPoint ? "with a point: " : "without a point: ") + reading;
        var turns = Times.Turns(seconds, step.After);
        var text = $"{Times.Of(seconds)} ({reading}, {Markdown.Plain(analysis.Machine.Name)}){(turns.Length > 0 ? " · " + turns : "")}.";
        if (step.Holes.Count > 0 && seconds != 0 && step.Holes[0].DwellSeconds == 0)
            text += $" G{step.Holes[0].Cycle} does not wait as it is read here.";
        return step.Words.HasCode('G', 40) ? text : text + " Carried over to the holes that follow.";
    }

    double Written(char letter) => Lengths.Written(analysis.Main.BlockAt(line), step, letter, analysis.Machine.Readings);
}
