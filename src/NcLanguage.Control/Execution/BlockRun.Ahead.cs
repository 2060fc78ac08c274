using NcLanguage.Control.Codes;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

/// <summary>What is known of the piece of path that follows a block.</summary>
enum PieceAhead : byte
{
    /// <summary>None follows, or none that this block's end has to fit.</summary>
    None,

    Known,

    /// <summary>The program moves on, but where to is not known.</summary>
    NotKnown,
}

// Where the path goes on behind a block, which decides where the tool's centre ends in it.
ref partial struct BlockRun
{
    /// <summary>Blocks that a control is taken to read ahead; blank lines and comments are none.</summary>
    const int BlocksAhead = 10;

    /// <summary>The next programmed piece in X and Y behind this block, which ends at a programmed place. What follows runs on a copy of the state
    /// with compensation off.</summary>
    readonly PieceAhead LookAhead(Point2 end, double z, out PathPiece piece)
    {
        piece = default;
        if (_step.Ahead is not { } ahead)
            return PieceAhead.None;
        var step = _step.Preview;
        var state = _state;
        state.Position = new Point3(end.X, end.Y, z);
        state.OffPath = default;
        state.Compensation = CompensationSide.Off;
        state.IsOnOffsetPath = false;
        AssignIn(ref state);
        var blocks = 0;
        ahead.Begin();
        for (var line = 1; line <= BlockExecutor.LinesAhead && blocks < BlocksAhead; line++)
        {
            if (!ahead.TryNext(out var block))
                return PieceAhead.None;
            if (block.Tokens.Length == 0)
                continue;
            _executor.Run(block, ref state, step);
            if (step.Words.Find(ModalGroup.RadiusCompensation) is not null || (step.Events & Ends) != 0 || step.Holes.Count > 0)
                return PieceAhead.None;
            if ((state.IsCalled && !_state.IsCalled) || (step.Transfer.Kind != TransferKind.None && !ahead.TryFollow(step.Transfer)))
                return PieceAhead.NotKnown;
            // The end of a called program is not that of the run.
            if (step.Transfer.Kind == TransferKind.Return)
                state.Ended = false;
            foreach (ref readonly var move in step.Moves.Items)
                if (IsPiece(move, out piece, out var found))
                    // An arc that is none is told at its own block.
                    return found == PieceAhead.NotKnown && IsArcRefused(step) ? PieceAhead.None : found;
            if (step.Words.Codes.Length > 0 || step.Words.HasAny(uint.MaxValue))
                blocks++;
        }
        return PieceAhead.None;
    }

    const StepEvents Ends = StepEvents.ToolChange | StepEvents.ProgramEnd | StepEvents.NotRun;

    static bool IsArcRefused(Step step)
    {
        foreach (ref readonly var fault in step.Faults.Items)
            if (fault.Kind is FaultKind.ArcImpossible or FaultKind.WordMissing)
                return true;
        return false;
    }

    static bool IsPiece(in Move move, out PathPiece piece, out PieceAhead found)
    {
        (piece, found) = (default, PieceAhead.None);
        if (!move.IsMotion)
            return false;
        var (from, to) = (InPlane(move.From), InPlane(move.To));
        if (move.Kind != MoveKind.Arc && (to - from).Length <= Rounding)
            return false;
        // A way out to the reference point, or an arc in another plane, is none that the offset path has to fit.
        if (move.Role == MoveRole.Machine || (move.Kind == MoveKind.Arc && move.Plane != WorkPlane.XY))
            return true;
        piece = move.Kind == MoveKind.Arc ? PathPiece.Arc(from, to, InPlane(move.Center), move.Clockwise) : PathPiece.Line(from, to);
        found = piece.IsKnown ? PieceAhead.Known : PieceAhead.NotKnown;
        return true;
    }
}
