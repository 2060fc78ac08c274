using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

// A run behind an edit that changes the state of all that follows, while it is under way: its first parts are of the new version, the rest still are those of the version before.
public sealed partial class ProgramRun
{
    int _partsRun = int.MaxValue;
    bool _tellsOnlyWhatRan;

    /// <summary>How many of the parts are of this version. A first look at findings takes the rest as they were.</summary>
    internal int PartsRun { init => _partsRun = value; }

    /// <summary>Whether all of it is of this version, or is taken as if it were.</summary>
    internal bool IsWhole => !_tellsOnlyWhatRan;

    /// <summary>The same run, that answers only what hangs on no block behind those that have run, and throws <see cref="NotYetRunException"/> for all else: what it tells, the whole run will tell.</summary>
    internal ProgramRun AsFarAsRun()
    {
        var run = (ProgramRun)MemberwiseClone();
        run._tellsOnlyWhatRan = true;
        (run._holeTable, run._freeNumbers, run._asked) = (null, null, null);
        return run;
    }

    /// <summary>A part of the run.</summary>
    internal PartResult Part(int part) => Demand(_parts[part], part < PartsKnown);

    /// <summary>What a part of the run is asked most.</summary>
    internal PartFacts FactsOf(int part) => Demand(_partFacts[part], part < PartsKnown);

    /// <summary>How many parts have run.</summary>
    internal int PartsKnown => IsWhole ? _parts.Length : _partsRun;

    /// <summary>The work offset that all of the run works under, see <see cref="PartResult.CoordinatesUsed"/>.</summary>
    int CoordinatesOfAll()
    {
        if (IsWhole)
            return _partFacts.All.CoordinatesUsed;
        var used = _partFacts.UpTo(_partsRun).CoordinatesUsed;
        // What is worked under so far goes on where nothing behind changes it: so it was in the version before, and so the text has it.
        return Demand(used, used == CoordinatesLog.Several || (used == _partFacts.All.CoordinatesUsed && StaysIn(used)));
    }

    /// <summary>The state that a part begins with.</summary>
    public ControlState EntryOf(int part) => Part(part).Entry;

    /// <summary>Whether the blocks behind those that have run can meet no other coordinates than those of a work offset, not shifted: they met no others in the version before, and
    /// what they say of them hangs on nothing that the edit has changed.</summary>
    internal bool StaysIn(int workOffset)
    {
        var (here, before) = (_parts[_partsRun - 1].Exit, _parts[_partsRun].Entry);
        var coordinates = WorkCoordinates.Of(here);
        if (!coordinates.IsKnown || coordinates.IsShifted || coordinates.WorkOffset != workOffset)
            return false;
        // What did not run there has said nothing, and a code or the P of G54.1 may be worked out from variables.
        if (!IsUnderWay(here) || !IsUnderWay(before) || here.NotFollowed != before.NotFollowed || !ReferenceEquals(here.Variables, before.Variables))
            return false;
        for (var part = _partsRun; part < _parts.Length; part++)
        {
            var sets = _partFacts[part].Sets & WorkCoordinates.Slots;
            if (sets != Slot.None && (sets != Slot.WorkOffset || !IsAllIn(part, workOffset)))
                return false;
        }
        return true;
    }

    static bool IsUnderWay(in ControlState state) => !state.Ended && !state.InLeader;

    /// <summary>Whether a part meets no other coordinates than those of a work offset before the program ends, and no holes are drilled behind that.</summary>
    bool IsAllIn(int part, int workOffset)
    {
        foreach (var (block, coordinates) in _parts[part].Coordinates)
        {
            if (coordinates.IsKnown ? coordinates.IsShifted || coordinates.WorkOffset != workOffset : HasHoles(part, block))
                return false;
        }
        return true;
    }

    /// <summary>Whether there is a hole from a block of a part on.</summary>
    bool HasHoles(int part, int block)
    {
        var holes = _parts[part].Holes;
        return (holes.Length > 0 && holes.LineOf(holes.Length - 1) >= block) || _partFacts.Behind(part + 1).Holes > 0;
    }

    static T Demand<T>(T value, bool isKnown) => isKnown ? value : throw new NotYetRunException();

    /// <summary>What hangs on all of the run.</summary>
    T OfWhole<T>(T value) => Demand(value, IsWhole);
}
