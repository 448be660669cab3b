using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Ties;

/// <summary>The numbers that were read, in the order of <see cref="TieModel.At"/>.</summary>
internal static class TieNumbers
{
    public static TieMatch[] Of(TieModel model)
    {
        var (all, readings) = (new List<TieMatch>(), model.Readings);
        void Add(string words, int? pass, double read, bool isAtLeast = false, bool isSwings = false) => all.Add(new TieMatch
        {
            Words = words,
            Pass = pass,
            Read = read,
            Spread = model.Spreads[all.Count],
            IsAtLeast = isAtLeast,
            IsSwings = isSwings,
            ByFile = double.NaN,
            ByFit = double.NaN,
        });
        for (var k = 0; k < readings.Passes.Length; k++)
        {
            var pass = readings.Passes[k];
            foreach (var tie in pass.Readings)
            {
                Add(
                    $"{TiePlaces.Words(tie.Place)} tie at {Numeral.Of(In.KilometresPerHour.Of(pass.Speed.Si), "0.#")} km/h",
                    k,
                    tie.Travel.Si,
                    tie.IsAtLeast);
            }
        }

        foreach (var swings in readings.Swings)
        {
            Add($"{CornerNames.Of(swings.End)} swings", null, swings.Frequency.Si, isSwings: true);
        }

        foreach (var heights in readings.Heights)
        {
            Add($"{CornerNames.Of(heights.End)} sank by", null, heights.Fall);
        }

        return [.. all];
    }
}
