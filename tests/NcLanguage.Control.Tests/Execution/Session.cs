using System.Globalization;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Feeds blocks to a control and writes down its moves, one a line: "rapid 4 5 3".</summary>
sealed class Session
{
    readonly BlockExecutor _executor;
    public ControlState State;
    public readonly Step Step = new();
    public readonly List<string> Log = [];
    public readonly List<Move> Moves = [];
    public readonly List<Hole> Holes = [];
    public readonly List<Fault> Faults = [];

    /// <summary>For each fault, the index of its block among those run together.</summary>
    public readonly List<int> FaultBlocks = [];

    public Session(MachineProfile? machine = null, Setup? setup = null, Point3? start = null, bool skip = false)
    {
        _executor = new BlockExecutor(machine ?? MachineProfile.IsoMill, setup ?? Setup.None, skip);
        State = _executor.Start();
        if (start is { } at)
        {
            State.Position = at;
            State.MachinePosition = at + _executor.Setup.WorkOffsets.GetValueOrDefault(State.WorkOffset, Point3.Unknown);
            State.Units = LengthUnit.Millimetre;
        }
    }

    /// <summary>Runs blocks, each of which sees those behind it.</summary>
    public Session Run(params string[] blocks)
    {
        var ahead = new Ahead([.. blocks.Select(text => SourceText.From(text).Chunks[0].Blocks)]);
        Step.Ahead = ahead;
        for (ahead.At = 0; ahead.At < blocks.Length; ahead.At++)
        {
            var block = ahead.Block;
            _executor.Run(block, ref State, Step);
            foreach (var move in Step.Moves.Items)
            {
                Moves.Add(move);
                Log.Add(Describe(move));
            }
            foreach (var hole in Step.Holes.Items)
                Holes.Add(hole);
            foreach (var fault in Step.Faults.Items)
            {
                Faults.Add(fault);
                FaultBlocks.Add(ahead.At);
            }
        }
        return this;
    }

    sealed class Ahead(BlockList[] blocks) : IBlocksAhead
    {
        int _next;

        public int At;

        public Block Block => blocks[At][0];

        public void Begin() => _next = At;

        public bool TryNext(out Block block)
        {
            _next++;
            block = _next < blocks.Length ? blocks[_next][0] : default;
            return _next < blocks.Length;
        }

        public bool TryFollow(in Transfer transfer) => false;
    }

    /// <summary>Forgets what was written down so far.</summary>
    public Session Clear()
    {
        Log.Clear();
        Moves.Clear();
        Holes.Clear();
        Faults.Clear();
        FaultBlocks.Clear();
        return this;
    }

    static string Describe(Move move) => move.IsMotion
        ? $"{move.Kind.ToString().ToLowerInvariant()} {Number(move.To.X)} {Number(move.To.Y)} {Number(move.To.Z)}"
        : move.Kind == MoveKind.Dwell ? $"dwell {Number(move.Seconds)}" : move.Kind.ToString().ToLowerInvariant();

    public static string Number(double value) =>
        double.IsNaN(value) ? "?" : (Math.Round(value, 6) + 0.0).ToString(CultureInfo.InvariantCulture);
}
