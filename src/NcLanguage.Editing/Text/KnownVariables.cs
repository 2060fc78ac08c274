using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Editing;

/// <summary>Lets expressions read a state's variables.</summary>
readonly struct KnownVariables(Variables? variables) : IVariables
{
    public double Get(int number) => variables?.Get(number) ?? double.NaN;

    public double Get(scoped ReadOnlySpan<byte> name) => double.NaN;
}
