using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Names of variables in a setup: #500 by number, #&lt;depth&gt; by name.</summary>
static class VariableName
{
    const int MostDigits = 6;

    public static bool IsSound(string name)
    {
        if (name.Length < 2 || name[0] != '#')
            return false;
        if (name[1] == '<')
            return name.Length > 3 && name[^1] == '>' && name[2..^1].All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-');
        return name.Length <= 1 + MostDigits && name.AsSpan(1).IndexOfAnyExceptInRange('0', '9') < 0;
    }

    public static void Report(JsonMember member, ValueReader read)
    {
        var meant = new[] { $"#{member.Name}", $"#<{member.Name}>", $"#<{member.Name.TrimStart('#')}>" }.FirstOrDefault(IsSound);
        var hint = meant is null ? "it is written like \"#500\" or \"#<depth>\"." : $"did you mean \"{meant}\"?";
        read.Problems.Add(
            ProblemKind.UnknownKey, member.NameRange,
            $"\"{MessageText.Clip(member.Name)}\" is no name of a variable, so it is ignored: {hint}", NearestName.Replacement(meant));
    }
}
