using Heaveline.Files.Forms;

namespace Heaveline.Files.Cars;

/// <summary>One number of a garage sheet.</summary>
/// <param name="Key">Its word in an address.</param>
/// <param name="Words">What is measured.</param>
/// <param name="How">How, in one line.</param>
/// <param name="Path">The key of the car file that it is written under; of a number that both axles share, that of the front one.</param>
/// <param name="Doubts">What the study of doubts calls it.</param>
public sealed record SheetLine(string Key, string Words, string How, IReadOnlyList<string> Path, IReadOnlyList<string> Doubts)
{
    /// <summary>The key as a form needs it: its units, and how it is read.</summary>
    public FormField Field => Key is GarageSheet.FrontMoves or GarageSheet.RearMoves
        ? CarFile.Form.At("wheelbase")! with
        {
            Example = "47.5 mm",
            Least = 0.0,
            IsOpenBelow = true,
            Most = 0.1,
            Limit = "above 0, at most 100 mm",
            UsualLow = 0.010,
            UsualHigh = 0.065,
        }
        : CarFile.Form.At([.. Path])!;

    /// <summary>What may have been meant by a number that no vehicle has in its unit; null where nothing is to be asked.</summary>
    /// <param name="text">The quantity as it is typed.</param>
    public UnitMend? Mend(string text) =>
        Key is GarageSheet.FrontMoves or GarageSheet.RearMoves ? UnitMend.OfTravel(Field, text) : UnitMend.Of(Field, text);

    /// <summary>Whether nothing is estimated in its place.</summary>
    public bool IsNeeded => Key is GarageSheet.Wheelbase or GarageSheet.FrontMass or GarageSheet.RearMass;
}
