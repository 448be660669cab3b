using System.CommandLine;
using System.CommandLine.Parsing;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>Choices of a question as arguments and options of a command.</summary>
internal static class ChoiceInputs
{
    /// <summary>Adds them to a command, in order.</summary>
    /// <returns>What was typed for them.</returns>
    public static Func<ParseResult, Given> Add(Command command, IEnumerable<Choice> choices)
    {
        var inputs = choices.Select(choice => Input(command, choice)).ToList();
        return result => new Given(inputs.SelectMany(input => input(result)));
    }

    /// <summary>
    /// Stops where anything is wrong. All of it is said, and the words weigh more than the files: they are wrong whatever the files say.
    /// </summary>
    public static void Stop(IReadOnlyCollection<Objection> objections)
    {
        if (objections.Count > 0)
        {
            throw new Stopped(
                string.Join('\n', objections.Select(o => $"heaveline: {o.Placed}").Distinct()),
                objections.Any(o => o.IsUsage) ? ExitCode.WrongUsage : ExitCode.Refused);
        }
    }

    private static Func<ParseResult, IEnumerable<(string Name, string? Words)>> Input(Command command, Choice choice)
    {
        if (choice.IsArgument)
        {
            // The library takes a list of one for no list.
            if (choice.Range.Most == 1.0)
            {
                var one = new Argument<string?>(choice.Name.ToUpperInvariant())
                {
                    Description = choice.Says,
                    Arity = choice.Range.Least == 0.0 ? ArgumentArity.ZeroOrOne : ArgumentArity.ExactlyOne,
                };
                one.Validators.Add(result => RefuseBlank(result, choice));
                command.Add(one);
                return result => [(choice.Name, result.GetValue(one))];
            }

            var argument = new Argument<string[]>(choice.Name.ToUpperInvariant())
            {
                Description = choice.Says,
                // How many there must be is said by whoever reads them.
                Arity = new ArgumentArity(1, (int)choice.Range.Most),
            };
            argument.Validators.Add(result => RefuseBlank(result, choice));
            command.Add(argument);
            return result => (result.GetValue(argument) ?? []).Select(words => (choice.Name, (string?)words));
        }

        if (choice.Kind == ChoiceKind.Tick)
        {
            var tick = new Option<bool>($"--{choice.Name}") { Description = choice.Says };
            command.Add(tick);
            return result => [(choice.Name, result.GetValue(tick) ? Choice.Yes : null)];
        }

        if (choice.IsRepeated)
        {
            var several =
                new Option<string[]>($"--{choice.Name}") { Description = choice.Says, HelpName = choice.HelpName, Required = choice.IsNeeded };
            several.Validators.Add(result => RefuseBlank(result, choice));
            command.Add(several);
            return result => (result.GetValue(several) ?? []).Select(words => (choice.Name, (string?)words));
        }

        var option = new Option<string?>($"--{choice.Name}") { Description = choice.Says, HelpName = choice.HelpName, Required = choice.IsNeeded };
        if (choice.Usual is { } usual)
        {
            option.DefaultValueFactory = _ => usual;
        }

        option.Validators.Add(result => RefuseBlank(result, choice));
        command.Add(option);
        // What is as usual was not given: the file of a study may say otherwise.
        return result => [(choice.Name, result.GetResult(option) is { Implicit: false } ? result.GetValue(option) : null)];
    }

    // A shell gives "" for a name that it does not know. Taken for nothing, it would be answered for the usual road or speed.
    private static void RefuseBlank(SymbolResult result, Choice choice)
    {
        if (result.Tokens.Any(token => token.Value.Length == 0))
        {
            result.AddError($"{(choice.IsArgument ? choice.Name.ToUpperInvariant() : $"--{choice.Name}")} is blank: give it words, or leave it out.");
        }
    }
}
