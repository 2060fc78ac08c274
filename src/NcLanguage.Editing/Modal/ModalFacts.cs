using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>The state in force as a list of parts, each with the line that set it.</summary>
sealed class ModalFacts
{
    readonly ProgramAnalysis _analysis;
    readonly int _line;
    readonly ControlState _state;
    readonly Lengths _lengths;
    readonly List<ModalFact> _facts = new(20);

    ModalFacts(ProgramAnalysis analysis, int line, in ControlState state)
    {
        _analysis = analysis;
        _line = line;
        _state = state;
        _lengths = Lengths.Of(state);
    }

    /// <summary>All parts of the state behind the block on a line (0-based), in a fixed order. Those of a cycle only while one is in force.</summary>
    public static List<ModalFact> Of(ProgramAnalysis analysis, int line, in ControlState state)
    {
        var facts = new ModalFacts(analysis, line, state);
        facts.AddModes();
        facts.AddMotion();
        facts.AddCycle();
        facts.AddTool();
        facts.AddSpindle();
        return facts._facts;
    }

    void AddModes()
    {
        Code("distance", Slot.Distance, "G90 or G91", _state.Distance switch { DistanceMode.Absolute => "G90", DistanceMode.Incremental => "G91", _ => "" });
        Code("units", Slot.Units, "mm or inch", _state.Units is LengthUnit.Unknown ? "" : $"G{UnitLength.CodeOf(_state.Units == LengthUnit.Inch, _analysis.Machine.Readings.Units)}", _state.Units == LengthUnit.Inch ? " inch" : " mm");
        Code("plane", Slot.Plane, "plane", _state.Plane switch { WorkPlane.XY => "G17", WorkPlane.ZX => "G18", WorkPlane.YZ => "G19", _ => "" });
        Code("workOffset", Slot.WorkOffset, "work offset", _state.WorkOffset <= 0 ? "" : WorkOffsetName.Format(_state.WorkOffset));
        AddShift("localShift", Slot.LocalShift, "G52", _state.LocalShift);
        AddShift("shift", Slot.Shift, "G92", _state.Shift);
        Code("compensation", Slot.Compensation, "radius compensation",
            _state.Compensation switch { CompensationSide.Off => "G40", CompensationSide.Left => "G41", CompensationSide.Right => "G42", _ => "" },
            _state.IsCompensated ? " by " + _lengths.Length(_state.CompensationRadius) : "");
        AddProgramFrame();
        if (_state.PathControl != PathControl.Unknown)
        {
            var (code, name) = _state.PathControl switch
            {
                PathControl.ExactPath => ("G61", "exact path"),
                PathControl.ExactStop => ("G61.1", "exact stop"),
                PathControl.SlowerInCorners => ("G62", "slower in corners"),
                _ => ("G64", "continuous path"),
            };
            Code("pathControl", Slot.PathControl, "", code, name, textOnly: true);
        }
        if (_state.OverridesOff)
            Code("override", Slot.Override, "", "M49", " overrides off");
    }

    /// <summary>A shift beside the work offset, by the axes that it moves; those of a program before are not known and not listed.</summary>
    void AddShift(string name, Slot slot, string code, Point3 shift)
    {
        if (!_state.HasSet(slot))
            return;
        var text = "";
        for (var axis = 0; axis < 3; axis++)
            if (shift[axis] != 0)
                text += $" {(char)('X' + axis)}{_lengths.Number(shift[axis])}";
        if (text.Length > 0)
            Code(name, slot, "", code, " shift" + text);
    }

    /// <summary>Polar words, scaling, rotation and mirror, where they are on.</summary>
    void AddProgramFrame()
    {
        if (_state.ProgramFrame is not { } frame)
            return;
        if (frame.Polar is not null)
            Code("polar", Slot.Polar, "", "G16", " polar coordinates");
        if (frame.Scaling is { } scaling)
            Code("scaling", Slot.Scaling, "", "G51", $" scaled by {Factors(scaling.Factors)} about {Point(scaling.About, 0, 1, 2)}");
        if (frame.Rotation is { } rotation)
        {
            var (first, second, _) = Arcs.Axes(rotation.Plane);
            Code("rotation", Slot.Rotation, "", "G68", $" turned by {Number(rotation.Degrees)}° about {Point(rotation.About, first, second)}");
        }
        if (frame.Mirror is { } mirror)
            Code("mirror", Slot.Mirror, "", "G51.1", $" mirrored about {Point(mirror.About, [.. Enumerable.Range(0, 3).Where(mirror.IsOn)])}");
    }

    static string Factors(Point3 factors) =>
        factors.X.Equals(factors.Y) && factors.Y.Equals(factors.Z) ? Number(factors.X)
        : $"X {Number(factors.X)}, Y {Number(factors.Y)}, Z {Number(factors.Z)}";

    static string Number(double value) => double.IsNaN(value) ? "?" : Say.Number(value);

    string Point(Point3 place, params ReadOnlySpan<int> axes)
    {
        var text = "";
        foreach (var axis in axes)
            text += (text.Length > 0 ? " " : "") + (char)('X' + axis) + _lengths.Number(place[axis]);
        return text;
    }

    void AddMotion()
    {
        if (_state.Cycle > 0)
            return;
        if (_state.Motion == MotionMode.None)
            Add(new ModalFact("motion", Slot.Motion, "no motion code", true, SetterOf(Slot.Motion | Slot.Cycle), "", double.NaN));
        else
            Code("motion", Slot.Motion, "motion code", MotionCode(_state.Motion));
    }

    /// <summary>The code of a motion mode; empty where there is none.</summary>
    public static string MotionCode(MotionMode motion) => motion switch
    {
        MotionMode.Rapid => "G0",
        MotionMode.Linear => "G1",
        MotionMode.ArcClockwise => "G2",
        MotionMode.ArcCounterclockwise => "G3",
        MotionMode.Thread => "G33",
        MotionMode.Probe => "G38.2",
        _ => "",
    };

    void AddCycle()
    {
        if (_state.Cycle == 0)
            return;
        Code("cycle", Slot.Cycle, "cycle", _state.Cycle < 0 ? "" : $"G{_state.Cycle}");
        if (_state.Cycle < 0)
            return;
        var depth = StepFacts.DepthLetter(_state);
        Code("returnLevel", Slot.ReturnLevel, "G98 or G99", _state.ReturnLevel switch { ReturnLevel.Initial => "G98", ReturnLevel.RLevel => "G99", _ => "" },
            _state.ReturnLevel switch
            {
                ReturnLevel.Initial => " back to " + _lengths.Axis(depth, Math.Max(_state.InitialLevel, _state.RLevel)),
                _ => " back to " + _lengths.Axis(depth, _state.RLevel),
            });
        Value("rLevel", Slot.CycleR, "R level", _state.RLevel, "R level " + _lengths.Axis(depth, _state.RLevel));
        Value("bottom", Slot.CycleBottom, "bottom", _state.Bottom, "bottom " + _lengths.Axis(depth, _state.Bottom));
        if (!double.IsNaN(_state.DwellNumber))
        {
            var seconds = DwellReadings.Seconds('P', _state.DwellNumber, _state.DwellHasPoint, _analysis.Machine.Readings);
            Value("dwell", Slot.CycleDwell, "dwell", seconds, "dwell " + Times.Of(seconds));
        }
        if (!double.IsNaN(_state.Peck))
            Value("peck", Slot.CyclePeck, "Q", _state.Peck, $"{(_state.Cycle is 76 or 87 ? "shift" : "peck")} {_lengths.Length(_state.Peck)}");
    }

    void AddTool()
    {
        Value("tool", Slot.Tool, "tool", _state.Tool < 0 ? double.NaN : _state.Tool, _state.Tool == 0 ? "no tool" : $"T{_state.Tool}");
        Value("selectedTool", Slot.SelectedTool, "next tool", _state.SelectedTool < 0 ? double.NaN : _state.SelectedTool, $"T{_state.SelectedTool} next");
        var code = _state.LengthOffset switch { LengthOffsetMode.Off => "G49", LengthOffsetMode.Plus => "G43", LengthOffsetMode.Minus => "G44", _ => "" };
        if (code is "G43" or "G44")
        {
            // A length offset that comes with the tool has no code of its own.
            var name = _analysis.Machine.Readings.LengthOffset == LengthOffsetReading.WithTool ? "length offset" : code;
            Add(new ModalFact("lengthOffset", Slot.LengthOffset, _state.H < 0 ? $"{name} H {Lengths.NotKnown}" : $"{name} H{_state.H}", true,
                SetterOf(Slot.LengthOffset), code, _state.H < 0 ? double.NaN : _state.H));
        }
        else
        {
            Code("lengthOffset", Slot.LengthOffset, "length offset", code, " no length offset", textOnly: true);
        }
    }

    void AddSpindle()
    {
        Code("spindle", Slot.Spindle, "spindle", _state.Spindle switch
        {
            SpindleState.Clockwise => "M3",
            SpindleState.Counterclockwise => "M4",
            SpindleState.Off => "M5",
            _ => "",
        }, _state.Spindle == SpindleState.Off ? "spindle off" : "", textOnly: _state.Spindle == SpindleState.Off);
        if (_state.SurfaceSpeed)
            Code("speedMode", Slot.SpeedMode, "", "G96", " S is a cutting speed");
        if (_state.RigidTapping)
            Code("rigidTapping", Slot.RigidTapping, "", "M29", " rigid tapping");
        Value("speed", Slot.Speed, "speed", _state.Speed, $"S{Say.Number(_state.Speed)}");
        Code("feedMode", Slot.FeedMode, "feed mode",
            _state.FeedMode switch { FeedMode.PerMinute => "G94", FeedMode.PerTurn => "G95", FeedMode.InverseTime => "G93", _ => "" });
        Value("feed", Slot.Feed, "feed", _state.Feed, "F " + FeedValue());
        Code("coolant", Slot.Coolant, "coolant", _state.Coolant switch
        {
            CoolantState.Unknown => "",
            CoolantState.Off => "M9",
            CoolantState.Mist => "M7",
            CoolantState.Flood => "M8",
            _ => "M7 M8",
        }, _state.Coolant == CoolantState.Off ? "coolant off" : " coolant on", textOnly: _state.Coolant == CoolantState.Off);
    }

    string FeedValue() => _state.FeedMode switch
    {
        FeedMode.PerTurn => _lengths.Fine(_state.Feed) + " per rev",
        FeedMode.InverseTime => $"{Say.Number(_state.Feed)} 1/min",
        _ => _lengths.Feed(_state.Feed),
    };

    void Code(string name, Slot slot, string whenUnknown, string code, string behind = "", bool textOnly = false) =>
        Add(code.Length == 0
            ? new ModalFact(name, slot, whenUnknown, false, SetterOf(slot), "", double.NaN)
            : new ModalFact(name, slot, textOnly ? behind.Trim() : code + behind, true, SetterOf(slot), code, double.NaN));

    void Value(string name, Slot slot, string whenUnknown, double value, string text) =>
        Add(new ModalFact(name, slot, double.IsNaN(value) ? whenUnknown : text, !double.IsNaN(value), SetterOf(slot), "", value));

    void Add(in ModalFact fact) => _facts.Add(fact);

    int SetterOf(Slot slot) => _analysis.Main.LastSetter(slot, _line);
}
