using Heaveline.Files.Garages;
using Heaveline.Files.Parts;
using Heaveline.Parts;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>A setup of the shortlist as a variant file of the garage: read back before it is written, whole or not at all.</summary>
internal static class SetupVariant
{
    // So many variants of one name beside each other, before it is better to tidy up.
    private const int Most = 99;

    // A file's name holds no more, the car's before it.
    private const int Longest = 50;

    /// <summary>Keeps a setup; one that is kept already is not kept twice.</summary>
    /// <param name="car">The car's name in the garage.</param>
    /// <param name="told">The setup.</param>
    /// <param name="garage">The garage.</param>
    /// <returns>The variant's name in the garage.</returns>
    /// <exception cref="RefusedValueException">No file can say it, or none can be written: nothing is.</exception>
    public static string Keep(string car, ChooseTold told, GarageView garage)
    {
        // The file may be another by now: the parts go into the car that it describes.
        if (garage.Car(car) is not { Value: { } now } reading || Fitting.Of(now, told.Fitted.Parts) is not Fitted fitted)
        {
            throw new RefusedValueException(
                "This setup", "not kept", "one of the car as its file has it now", "The file has changed: look at the shortlist anew.");
        }

        var parts = string.Join(", ", fitted.Parts.Select(part => part.Option.Name));
        for (var number = 1; number <= Most; number++)
        {
            var name = (parts.Length <= Longest ? parts : parts[..Longest].TrimEnd(' ', ','))
                + (number > 1 ? FormattableString.Invariant($" {number}") : "");
            var text = FittedVariant.Of(fitted, reading, name, GarageView.FileOf(car));
            var file = PassVariant.FileName(car, name) + ".yaml";
            if (garage.Garage.Car(file, text) is { Value: null, Refusals: [var first, ..] })
            {
                throw new RefusedValueException("This setup", "not kept", "one that a file may describe", $"{first.Message} {first.Advice}");
            }

            var saved = garage.Garage.Save(file, text, null);
            if (saved.End is SaveEnd.Saved or SaveEnd.Unchanged || garage.Garage.Read(file).Text == text)
            {
                return GarageView.NameOf(file);
            }

            if (saved.End != SaveEnd.Conflict)
            {
                throw new RefusedValueException("This setup", "not kept", "kept", $"{saved.Message} {saved.Advice}");
            }
        }

        throw new RefusedValueException(
            "This setup", "not kept", "one of fewer than a hundred of its name", "Take some of them out on the first page.");
    }
}
