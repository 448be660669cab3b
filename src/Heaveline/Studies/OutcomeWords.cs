using Heaveline.Passes;

namespace Heaveline.Studies;

/// <summary>Why a pass among many has no number, in words.</summary>
internal static class OutcomeWords
{
    /// <summary>A clause without its full stop ("the body turned past 20°").</summary>
    /// <param name="outcome">How the pass ended; null where there was none.</param>
    public static string Of(PassOutcome? outcome) => outcome switch
    {
        PassOutcome.AngleOutOfRange => "the body turned past 20°",
        PassOutcome.LineEmptied => "the pressure in the line fell to zero",
        PassOutcome.Diverged => "the numbers grew without bound",
        PassOutcome.TravelOutOfRange => "a wheel ran past the end of its travel",
        _ => "the measure has no value there",
    };
}
