using System.CommandLine;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Common;

/// <summary>Options that take one of a few words.</summary>
static class ChoiceOption
{
    const int WidestNames = 40;

    public static Option<string> Create(string name, string description, params string[] choices)
    {
        // The column of names is as wide as its widest.
        var names = string.Join('|', choices);
        var isLong = names.Length > WidestNames;
        var option = new Option<string>(name)
        {
            Description = isLong ? $"{description} One of {string.Join(", ", choices)}." : description,
            HelpName = isLong ? name.TrimStart('-').ToUpperInvariant() : names,
            DefaultValueFactory = _ => choices[0],
        };
        option.CompletionSources.Add(choices);
        option.Validators.Add(result =>
        {
            if (result.Tokens is not [{ Value: var written }] || choices.Contains(written))
                return;
            result.AddError($"{name} has no choice {written}; {NearestName.DidYouMean(written, choices, $"there are {string.Join(", ", choices)}")}");
        });
        return option;
    }
}
