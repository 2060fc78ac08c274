using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

// G10: the program writes work offsets and tool offsets itself. Nothing moves.
ref partial struct BlockRun
{
    /// <summary>L2 sets a datum (NISTIR 6556 §3.5.5), L20 one so that the tool stands at the numbers written (common practice), L1, L10 and L11 a
    /// tool's length, L12 and L13 its radius (common practice: L11 and L13 its wear).</summary>
    readonly void SetOffsetData(int token)
    {
        foreach (var letter in "LPR")
            _words.Use(letter);
        if (!_words.Has('L'))
        {
            AddFault(FaultKind.WordMissing, token, 'L');
            return;
        }
        _step.Sets |= Slot.OffsetData;
        var kind = _words['L'];
        if (kind is not (1 or 2 or 10 or 11 or 12 or 13 or 20))
        {
            AddFault(FaultKind.NotFollowed, token);
            LoseOffsets();
        }
        else if (!_words.Has('P'))
            AddFault(FaultKind.WordMissing, token, 'P');
        else if (double.IsNaN(_words['P']))
            LoseOffsets();
        else if (kind is 2 or 20)
        {
            if (!HasAxisWords)
                AddFault(FaultKind.WordMissing, token, 'X');
            SetDatum(isHere: kind == 20);
        }
        else
            SetToolOffset(token, (int)kind);
    }

    /// <summary>It is not known which offset has got which value.</summary>
    readonly void LoseOffsets()
    {
        _state.OffsetData = OffsetData.Lost;
        Forget(AllAxes);
        _state.InitialLevel = double.NaN;
    }

    readonly void SetDatum(bool isHere)
    {
        if (!TakeWhole('P', out var number))
            return;
        // NISTIR 6556 §3.5.5: systems 1 to 9.
        if (number is < 1 or > 9)
        {
            AddFault(FaultKind.ValueNotAllowed, _words.TokenOf('P'), 'P', number);
            return;
        }
        var workOffset = SystemVariables.OfSystem(number);
        var old = Offsets.Datum(workOffset, _state, Setup);
        var (places, steps) = (old, default(Point3));
        for (var axis = 0; axis < 3; axis++)
        {
            if (!_words.Has((char)('X' + axis)))
                continue;
            var value = Length((char)('X' + axis));
            var (place, step) = isHere ? DatumHere(workOffset, axis, value, old[axis]) : DatumThere(value, old[axis]);
            (places, steps) = (places.With(axis, place), steps.With(axis, step));
        }
        PutDatum(workOffset, WordAxes(), places, steps, isHere);
    }

    /// <summary>A datum written through its variable (NISTIR 6556 table 2): #5221 to #5223 for G54, 20 more for each further one.</summary>
    readonly void SetDatumByVariable(int number, double value)
    {
        var (system, axis) = SystemVariables.DatumOf(number);
        var workOffset = SystemVariables.OfSystem(system);
        var old = Offsets.Datum(workOffset, _state, Setup);
        var place = value * MmPerUnit;
        PutDatum(workOffset, Bit(axis), old.With(axis, place), default(Point3).With(axis, place - old[axis]), isHere: false);
        _step.Sets |= Slot.OffsetData;
    }

    /// <summary>Puts a datum to another place along some axes.</summary>
    /// <param name="steps">By how much it moves, mm.</param>
    /// <param name="isHere">It was put by where the tool stands.</param>
    readonly void PutDatum(int workOffset, int axes, Point3 origin, Point3 steps, bool isHere)
    {
        var before = _state;
        var old = Offsets.Datum(workOffset, _state, Setup);
        var moved = Offsets.Moved(workOffset, _state);
        var putFirst = _state.OffsetData?.Datum(workOffset)?.PutFirst ?? 0;
        for (var axis = 0; axis < 3; axis++)
        {
            if ((axes & Bit(axis)) == 0)
                continue;
            // A datum that nobody had a place for is meant to lie where it is put first.
            var isFirst = !isHere && double.IsNaN(steps[axis]) && double.IsNaN(old[axis]) && moved[axis] == 0;
            putFirst |= isFirst ? Bit(axis) : 0;
            moved = moved.With(axis, isFirst ? 0 : moved[axis] + steps[axis]);
        }
        _state.OffsetData = (_state.OffsetData ?? OffsetData.None).WithDatum(workOffset, new SetDatum(origin, moved, putFirst));
        _state.Happened &= ~Happened.MovedOffFrame;
        if (workOffset == _state.WorkOffset)
            Offsets.Changed(ref _state, before, Setup, Slot.OffsetData, axes, steps);
    }

    /// <summary>L2: the datum in machine coordinates and by how much it moves; in G91 the amount is added (common practice).</summary>
    readonly (double Place, double Step) DatumThere(double value, double old) => _state.Distance switch
    {
        DistanceMode.Absolute => (value, value - old),
        DistanceMode.Incremental => (old + value, value),
        _ => (double.NaN, double.NaN),
    };

    /// <summary>L20: the datum under which the place where the tool stands reads <paramref name="value"/>.</summary>
    readonly (double Place, double Step) DatumHere(int workOffset, int axis, double value, double old)
    {
        var length = axis == 2 ? Offsets.LengthValue(_state, Setup) : 0;
        var place = _state.MachinePosition[axis] - length - Offsets.Shift(_state)[axis] - value;
        if (workOffset != _state.WorkOffset)
            return (place, place - old);
        var step = Offsets.Known(StandsAt(axis) - value, place - old);
        return (Offsets.Known(old + step, place), step);
    }

    readonly void SetToolOffset(int token, int kind)
    {
        if (!_words.Has('R'))
            AddFault(FaultKind.WordMissing, token, 'R');
        if (!TakeWhole('P', out var number) || !_words.Has('R'))
            return;
        var before = _state;
        var data = _state.OffsetData ?? OffsetData.None;
        if (kind is 12 or 13)
        {
            var radius = data.Radius(number) ?? new SetSize(Offsets.RadiusOf(number, _state, Setup), 0);
            _state.OffsetData = data.WithRadius(number, Written(radius, isWear: kind == 13));
            return;
        }
        var length = data.Length(number) ?? new SetSize(Setup.FindLengthOffset(number)?.Length ?? double.NaN, 0);
        var now = Written(length, isWear: kind == 11);
        _state.OffsetData = data.WithLength(number, now);
        if (_state.H != number || _state.LengthOffset == LengthOffsetMode.Off)
            return;
        // The part that is not written stays as it is, known or not.
        var longer = kind == 11 ? now.Wear - length.Wear : now.Size - length.Size;
        var up = _state.LengthOffset switch { LengthOffsetMode.Plus => longer, LengthOffsetMode.Minus => -longer, _ => double.NaN };
        Offsets.Changed(ref _state, before, Setup, Slot.OffsetData, Bit(2), new Point3(0, 0, up));
    }

    /// <summary>The size with R written into it; in G91 R is added (common practice).</summary>
    readonly SetSize Written(SetSize size, bool isWear)
    {
        var value = Length('R');
        var old = isWear ? size.Wear : size.Size;
        value = _state.Distance switch { DistanceMode.Absolute => value, DistanceMode.Incremental => old + value, _ => double.NaN };
        return isWear ? size with { Wear = value } : size with { Size = value };
    }
}
