using System.Diagnostics;
using NcLanguage.Fuzz.Cases;

namespace NcLanguage.Fuzz.Running;

/// <summary>A case that failed. Failures with one sign have one cause, as far as can be told.</summary>
/// <param name="Sign">The demand that was not met, or the exception and where it was thrown.</param>
sealed record Failure(int Seed, FuzzCase Case, string Sign, string Detail)
{
    public static string SignOf(Exception e)
    {
        if (e is FuzzFault fault)
            return fault.What;
        var own = new StackTrace(e).GetFrames().FirstOrDefault(frame => frame.GetMethod()?.DeclaringType?.FullName?.StartsWith("NcLanguage.", StringComparison.Ordinal) == true);
        return $"{e.GetType().Name} in {own?.GetMethod()?.DeclaringType?.Name}.{own?.GetMethod()?.Name}";
    }
}
