namespace NcLanguage.Control.Execution;

/// <summary>Kinds of moves that a block of numbers alone can make, G0 to G3 in the XY plane with nothing in force that leads them elsewhere.</summary>
[Flags]
enum PlainMoves : byte { None = 0, Rapid = 1, Cut = 2 }
