using System.CommandLine;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Common;

/// <summary>Options that take one of a few words.</summary>
static class ChoiceOption
{
    public static Option<string> Create(string name, string description, params string[] choices)
    {
        var option = new Option<string>(name)
        {
            Description = description,
            HelpName = string.Join('|', choices),
            DefaultValueFactory = _ => choices[0],
        };
        option.CompletionSources.Add(choices);
        option.Validators.Add(result =>
        {
            if (result.Tokens is not [{ Value: var written }] || choices.Contains(written))
                return;
            var nearest = NearestName.Find(written, choices);
            result.AddError($"{name} has no choice {written}; {(nearest is null ? $"there are {string.Join(", ", choices)}" : $"did you mean {nearest}?")}");
        });
        return option;
    }
}
