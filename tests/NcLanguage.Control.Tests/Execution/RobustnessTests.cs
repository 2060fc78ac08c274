using System.Diagnostics;
using System.Text;
using CsCheck;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Tests.Execution;

/// <summary>Any text at all: nothing is thrown, every block ends, the same text gives the same run, and the hot path allocates nothing.</summary>
public sealed class RobustnessTests
{
    static readonly string[] Codes =
    [
        .. Control.Codes.CodeTable.All.Select(code => code.Text), "G77", "G1.5", "M777", "G#1", "G-1", "G99999999999", "M", "G",
    ];

    static readonly string[] Values =
    [
        "0", "1", "-1", "5", "-5.5", "0.001", "1000", "-0", "9999", "99999999999999999999", "1e5", ".", "", "-", "#1", "##2", "#[1/0]", "[1", "[2*3]",
        "SQRT[-1]", "-#1", "0.0000001", "1.5", "#99999", "54", "2", "3",
    ];

    static readonly string[] Lines =
    [
        "%", "M30", "O5", ":7", "/G0 X1", "GOTO 5", "IF [#1 EQ 1] GOTO 5", "#1=5", "##1=#2", "#1=", "(open", "; rest", "(a (b) c)", "\u00e9\u4f60", "", " ",
    ];

    static readonly Gen<string> Word = Gen.Frequency(
        (4, Gen.Int[0, Codes.Length - 1].Select(i => Codes[i])),
        (6, Gen.Select(Gen.Int[0, 25], Gen.Int[0, Values.Length - 1], (letter, value) => (char)('A' + letter) + Values[value])),
        (4, Gen.Select(Gen.Int[0, 8], Gen.Int[-50, 50], (letter, value) => "XYZRIJKPQ"[letter] + value.ToString(System.Globalization.CultureInfo.InvariantCulture))));

    static readonly Gen<string> Line = Gen.Frequency(
        (9, Word.Array[1, 8].Select(words => string.Join(' ', words))),
        (2, Gen.Int[0, Lines.Length - 1].Select(i => Lines[i])));

    internal static readonly Gen<MachineProfile> AnyMachine = Gen.Select(Gen.Int[0, 4095], Gen.Int[0, 2], (bits, dwell) => MachineProfile.IsoMill with
    {
        MaxFeed = (bits & 2048) != 0 ? 500 : null,
        Readings = new Readings
        {
            Dwell = (DwellReading)dwell,
            Integers = (IntegerReading)(bits & 1),
            HolePositions = (HolePositionReading)(bits >> 1 & 1),
            ReturnLevel = (ReturnLevelReading)(bits >> 2 & 1),
            RapidPath = (RapidPathReading)(bits >> 3 & 1),
            Repeats = (RepeatReading)(bits >> 4 & 1),
            ArcCentre = (ArcCentreReading)(bits >> 5 & 1),
            ToolChange = (ToolChangeReading)(bits >> 6 & 1),
            Units = (UnitReading)(bits >> 7 & 1),
            LengthOffset = (LengthOffsetReading)(bits >> 8 & 1),
            StopsAct = (StopReading)(bits >> 9 & 1),
            IncrementalR = (IncrementalRReading)(bits >> 10 & 1),
            RapidsEndCycle = (bits & 2048) == 0,
        },
    });

    static readonly Setup Plate = OrderTests.Datum with { Tools = [new Tool { Number = 1, Length = 80 }, new Tool { Number = 5 }] };

    /// <summary>Random blocks of a rich vocabulary under every combination of readings: run twice, the same steps and the same state, moves that join on.</summary>
    [Fact]
    public void Random_blocks() => Gen.Select(AnyMachine, Line.Array[1, 25], Gen.Bool).Sample((machine, lines, skip) =>
    {
        var text = SourceText.From(string.Join('\n', lines));
        var (first, second) = (new BlockExecutor(machine, Plate, skip), new BlockExecutor(machine, Plate, skip));
        var (one, other) = (first.Start(), second.Start());
        var (step, again) = (new Step(), new Step());
        foreach (var chunk in text.Chunks)
        {
            for (var i = 0; i < chunk.Blocks.Count; i++)
            {
                var block = chunk.Blocks[i];
                var before = one;
                first.Run(block, ref one, step);
                Check(step, one, block.Tokens.Length);
                second.Run(block, ref other, again);
                Same(step, again);
                // The block itself remembers nothing.
                var repeated = before;
                first.Run(block, ref repeated, again);
                Same(step, again);
                Assert.Equal(one, repeated);
                Assert.Equal(one.GetHashCode(), repeated.GetHashCode());
            }
        }
        Assert.Equal(one, other);
    }, iter: 1000);

    /// <summary>Random bytes, and programs with bytes changed at random.</summary>
    [Fact]
    public void Random_bytes() => Gen.OneOf(
        Gen.Byte.Array[0, 300],
        Gen.Select(Line.Array[1, 10], Gen.Select(Gen.Int[0, 400], Gen.Byte).Array[0, 10], (lines, damage) =>
        {
            var bytes = Encoding.UTF8.GetBytes(string.Join('\n', lines));
            foreach (var (at, value) in damage)
                if (at < bytes.Length)
                    bytes[at] = value;
            return bytes;
        })).Sample(bytes =>
    {
        var executor = new BlockExecutor(MachineProfile.TrainingMill, Plate);
        var state = executor.Start();
        var step = new Step();
        foreach (var chunk in SourceText.From(bytes).Chunks)
            for (var i = 0; i < chunk.Blocks.Count; i++)
            {
                var block = chunk.Blocks[i];
                executor.Run(block, ref state, step);
                Check(step, state, block.Tokens.Length);
            }
    }, iter: 2000);

    static void Check(Step step, in ControlState state, int tokens)
    {
        Assert.Equal(state, step.After);
        Assert.True(step.Moves.Count + step.Holes.Count <= MoveBudget.OfBlock + 32);
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            Assert.False(move.Seconds < 0 || double.IsInfinity(move.Seconds), $"{move}");
            Assert.False(move.Feed <= 0, $"{move}");
            if (i > 0 && move.IsMotion && step.Moves[i - 1].IsMotion)
                Assert.Equal(step.Moves[i - 1].To, move.From);
        }
        foreach (var fault in step.Faults.Items)
            Assert.InRange(fault.Token, 0, Math.Max(0, tokens - 1));
        Assert.Equal(step.Moves.Count > 0, (step.Events & StepEvents.Moves) != 0);
        Assert.Equal(step.Holes.Count > 0, (step.Events & StepEvents.Holes) != 0);
    }

    static void Same(Step a, Step b)
    {
        Assert.True(a.Moves.Items.SequenceEqual(b.Moves.Items));
        Assert.True(a.Holes.Items.SequenceEqual(b.Holes.Items));
        Assert.True(a.Faults.Items.SequenceEqual(b.Faults.Items));
        Assert.Equal((a.Before, a.After, a.Sets, a.Events, a.ToFrame, a.ToMachine), (b.Before, b.After, b.Sets, b.Events, b.ToFrame, b.ToMachine));
    }

    /// <summary>Repeats times pecks have a budget: what goes beyond is refused, not run, and where the tool ends is not known in increments.</summary>
    [Theory]
    [InlineData("G91 G99 G83 X1 Z-10 R-1 Q0.00001 L9999", 9999)]
    [InlineData("G91 G99 G83 X1 Z-10 R-1 Q0.01 L9999")]
    [InlineData("G91 G99 G73 X1 Z-10 R-1 Q0.001 L9999")]
    [InlineData("G91 G99 G81 X1 Z-10 R-1 L99999999")]
    [InlineData("G91 G99 G81 X1 Z0 R0 L99999999")]
    public void Budget_of_a_block(string block, double x = double.NaN)
    {
        var watch = Stopwatch.StartNew();
        var session = new Session(start: default(Point3)).Run("F100").Clear().Run(block);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10));
        Assert.InRange(session.Moves.Count, 0, MoveBudget.OfBlock + 32);
        var fault = session.Faults.Single(fault => fault.Kind == FaultKind.TooManyMoves);
        Assert.Equal(MoveBudget.OfBlock, fault.A);
        // Pecks left out leave the tool's end known, repeats left out do not.
        Assert.Equal(x, session.State.Position.X);
        Assert.Equal(0, session.State.Position.Y);
    }

    /// <summary>What cannot be read costs what its bytes cost, whether it stands in one block or in many. Least of several turns, so that what else the machine does counts for nothing; a square would be 32 times as much.</summary>
    [Theory]
    [InlineData("X ")]
    [InlineData("\u0001 ")]
    public void A_long_block_costs_what_as_much_text_in_short_ones_costs(string piece)
    {
        const int Pieces = 1_600, Parts = 32, Turns = 7;
        var shorter = string.Concat(Enumerable.Repeat(piece, Pieces / Parts));
        var (whole, parts) = (SourceText.From(Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat(shorter, Parts)))), SourceText.From(Encoding.ASCII.GetBytes(shorter)));
        var executor = new BlockExecutor(MachineProfile.IsoMill, Setup.None);
        var (ofWhole, ofParts) = (TimeSpan.MaxValue, TimeSpan.MaxValue);
        for (var turn = 0; turn < Turns; turn++)
        {
            ofWhole = Least(ofWhole, Time(whole, 1));
            ofParts = Least(ofParts, Time(parts, Parts));
        }
        Assert.True(ofWhole < 8 * ofParts, $"{ofWhole.TotalMilliseconds} ms, {ofParts.TotalMilliseconds} ms in {Parts} parts");

        TimeSpan Time(SourceText text, int times)
        {
            var (state, step) = (executor.Start(), new Step());
            var block = text.BlockAt(0);
            var watch = Stopwatch.StartNew();
            for (; times > 0; times--)
                executor.Run(block, ref state, step);
            return watch.Elapsed;
        }

        static TimeSpan Least(TimeSpan a, TimeSpan b) => a < b ? a : b;
    }

    /// <summary>Blocks of very many moves have a budget together: behind it each is followed for a row of holes, no more.</summary>
    [Fact]
    public void Budget_of_long_blocks_together()
    {
        var session = new Session(start: default(Point3)).Run("F100 G91 G99 G81 Z-1 R0");
        const int Left = 100_000;
        session.State.MovesOfLongBlocks = MoveBudget.OfLongBlocks - Left;
        var moves = 0;
        // Without the budget it would go on for ever.
        while (moves <= Left + MoveBudget.OfBlock && !session.Clear().Run("X0.01 L9999").Faults.Any(fault => fault.Kind == FaultKind.TooManyMoves))
            moves += session.Moves.Count;
        Assert.InRange(moves, Left, Left + MoveBudget.OfBlock);
        // The hole under way when the budget ends is finished.
        Assert.InRange(session.Moves.Count, 300, MoveBudget.ManyMoves + 32);
        Assert.Equal(MoveBudget.ManyMoves, session.Faults.Single(fault => fault.Kind == FaultKind.TooManyMoves).A);
        Assert.Empty(session.Clear().Run("G90 X0").Run("G91 X1 L200").Faults);
    }

    /// <summary>However many blocks ask for more, each is followed for less behind that; a row of 20 holes still is one.</summary>
    [Fact]
    public void Budget_of_cut_blocks_together()
    {
        var session = new Session(start: default(Point3)).Run("F100 G91 G99 G81 Z-1 R0");
        const int Blocks = 2_000;
        var (moves, last) = (0L, 0.0);
        for (var i = 0; i < Blocks; i++)
        {
            moves += session.Clear().Run("X0.01 L99999999").Moves.Count;
            last = session.Faults.Single(fault => fault.Kind == FaultKind.TooManyMoves).A;
        }
        Assert.Equal(MoveBudget.FewMoves, last);
        Assert.InRange(moves, MoveBudget.OfLongBlocks, MoveBudget.OfLongBlocks + MoveBudget.OfBlock + MoveBudget.OfCutBlocks + MoveBudget.ManyMoves + (Blocks * MoveBudget.FewMoves));
        Assert.Empty(session.Clear().Run("G90 X0").Run("G91 X1 L20").Faults);
    }

    /// <summary>What many sound blocks make together is never counted: rows of 20 holes, and of 200.</summary>
    [Theory]
    [InlineData(20, 2_000)]
    [InlineData(200, 1_500)]
    public void Rows_of_holes_are_followed_however_many_they_are(int holes, int rows)
    {
        var session = new Session(start: default(Point3)).Run("F100 G91 G99 G81 Z-1 R0");
        for (var i = 0; i < rows; i++)
            Assert.Empty(session.Clear().Run($"X0.01 L{holes}").Faults);
        Assert.Equal(0, session.State.MovesOfLongBlocks);
    }

    /// <summary>A deep hole in sound pecks is far below the budget.</summary>
    [Fact]
    public void Budget_leaves_sound_programs_alone() =>
        Assert.Empty(new Session(start: default(Point3)).Run("F100 G91 G99 G83 X1 Z-200 R-1 Q0.5 L50").Faults);

    /// <summary>10,000 blocks of ordinary code allocate nothing once the step has its storage.</summary>
    [Fact]
    public void Ordinary_blocks_allocate_nothing()
    {
        string[] cycle =
        [
            "N10 G0 G90 X10. Y5. Z50 (rapid)", "N20 G1 Z-1.5 F120", "G2 X20 Y5 I5 J0", "G3 X10 R5", "G0 Z50", "T1 M6", "G43 H1 Z30 M8", "S1200 M3",
            "G98 G81 X10 Y10 Z-5 R2", "X20", "G99 Y20", "G83 X30 Z-20 Q5 R2", "G91 X5 L3", "G80 G90", "G4 P0.5", "G55", "G54", "G92 X5", "G92.1", "G28 G91 Z0",
            "G53 G0 Z0", "G90 G1 X[2*3+1] Z#5", "/X5", "M9", "M5", "G52 X5", "G52 X0", "G20", "G21", "G41 D1", "G40", "; note", "",
        ];
        var chunk = SourceText.From(string.Join('\n', cycle)).Chunks[0];
        var blocks = chunk.Blocks;
        var executor = new BlockExecutor(MachineProfile.IsoMill, Plate with { WorkOffsets = Plate.WorkOffsets.Add(55, default) });
        var step = new Step();
        var state = executor.Start();
        Run(blocks.Count * 3);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Run(10_000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Run(int count)
        {
            for (var i = 0; i < count; i++)
                executor.Run(blocks[i % blocks.Count], ref state, step);
        }
    }
}
