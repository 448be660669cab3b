using Heaveline.Files.Cars;
using Heaveline.Files.Garages;
using Heaveline.Quantities;
using Heaveline.Studies;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;

namespace Heaveline.Web.Pages.Chosen;

/// <summary>A setup of the shortlist as a variant file of the garage: read back before it is written, whole or not at all.</summary>
internal static class SetupVariant
{
    // So many variants of one name beside each other, before it is better to tidy up.
    private const int Most = 99;

    /// <summary>Keeps a setup; one that is kept already is not kept twice.</summary>
    /// <param name="car">The car's name in the garage.</param>
    /// <param name="told">The setup.</param>
    /// <param name="garage">The garage.</param>
    /// <returns>The variant's name in the garage.</returns>
    /// <exception cref="RefusedValueException">No file can say it, or none can be written: nothing is.</exception>
    public static string Keep(string car, ChooseTold told, GarageView garage)
    {
        if (garage.Car(car) is not { Value: not null, Root: { } root })
        {
            throw new RefusedValueException("This setup", "not kept", "one of a car that can be read", "Put the car's file right first.");
        }

        var parts = string.Join(", ", told.Fitted.Parts.Select(part => part.Option.Name));
        for (var number = 1; number <= Most; number++)
        {
            var name = Shortened(parts) + (number > 1 ? FormattableString.Invariant($" {number}") : "");
            var written = VariantFile.Write(
                name, GarageView.FileOf(car), root, SetupWords.Of(told.Fitted, root), $"Chosen of a list of parts: {parts}.");
            var text = written.Text ?? throw new RefusedValueException(
                "This setup", "not kept", "one that a file can describe", $"{written.Refusal!.Message} {written.Refusal.Advice}");
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

        throw new RefusedValueException("This setup", "not kept", "one of fewer than a hundred of its name", "Take some of them out on the first page.");
    }

    private static string Shortened(string parts) => parts.Length <= 50 ? parts : parts[..50].TrimEnd(' ', ',');
}
