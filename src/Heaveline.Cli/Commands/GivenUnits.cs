using Heaveline.Cli.Output;
using Heaveline.Files.Garages;

namespace Heaveline.Cli.Commands;

/// <summary>The units of a command's words: those that were asked for, else those that the garage of its first car remembers, else metric.</summary>
internal static class GivenUnits
{
    /// <summary>The words with the units that hold for them written out.</summary>
    /// <exception cref="Stopped">What the garage remembers cannot be read.</exception>
    public static Given Of(Given given)
    {
        if (given.Of(Choices.Units) is not null || given.Of(Choices.Car) is not { } car)
        {
            return given;
        }

        var remembered = GarageChoices.Units(Path.GetDirectoryName(Path.GetFullPath(car)) ?? car);
        return remembered.Value is { } units
            ? units.IsImperial ? given.With(Choices.Units, units.Word) : given
            : throw new Stopped(remembered.Format(), ExitCode.Refused);
    }
}
