using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>
/// What can be said of any setup before it is driven, from each axle by itself: whether its parts fit, how the car then rolls, pitches in braking and
/// aims its lamp. Without anything that joins front and rear, roll stiffness is the sum of two axles' and pitch that of what either end gives way; a
/// load
/// to one side makes it a little less than exact, and who is chosen is looked at as a whole.
/// </summary>
internal sealed class ChooseAxles
{
    private readonly ChooseAsked asked;
    private readonly ChooseParts parts;
    private readonly int[][] places;
    private readonly long[][] weights;
    private readonly AxleStand?[][] stands;
    private readonly double[] gravity;
    private readonly bool[] onStops;
    private readonly double swing;

    private ChooseAxles(ChooseAsked asked, ChooseParts parts, int degree)
    {
        (this.asked, this.parts) = (asked, parts);
        places = [At(AxleEnd.Front), At(AxleEnd.Rear)];
        weights = [.. places.Select(own => own.Select((_, k) => own.Skip(k + 1).Aggregate(1L, (n, p) => n * Options(p))).ToArray())];
        gravity = [.. asked.Loads.Select(load => RideModel.Of(asked.Car, load).RollGravity)];
        onStops = [.. asked.Loads.Select(load => ChooseStanding.IsOnStops(new CarAtRest(RideModel.Of(asked.Car, load))))];
        stands = [.. places.Select((own, end) => Stands(own, end == 0, degree))];
        swing = Swing(stands[0][0]!, stands[1][0]!);
    }

    /// <summary>Of a study; null where something joins front and rear, or may.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="parts">The setups.</param>
    /// <param name="degree">How many threads.</param>
    public static ChooseAxles? Of(ChooseAsked asked, ChooseParts parts, int degree) =>
        parts.IsJoined ? null : new ChooseAxles(asked, parts, degree);

    /// <summary>Why a setup is none to choose, as far as its axles tell.</summary>
    public ChooseRefusal Of(long setup)
    {
        if (asked.Limits.Cost is { } most && (decimal)parts.Space.Price(setup) > most.Value)
        {
            return ChooseRefusal.Cost;
        }

        if (stands[0][Index(setup, 0)] is not { } front || stands[1][Index(setup, 1)] is not { } rear)
        {
            return ChooseRefusal.Misfit;
        }

        var (before, behind) = (stands[0][0]!, stands[1][0]!);
        for (var k = 0; k < gravity.Length; k++)
        {
            if (onStops[k])
            {
                continue;
            }

            // The angle per g goes with one over what holds the body, less what gravity takes.
            var (was, now) = (before.Roll[k] + behind.Roll[k] - gravity[k], front.Roll[k] + rear.Roll[k] - gravity[k]);
            if (was > 0.0 && !(was <= (1.0 + asked.Limits.Roll) * now))
            {
                return ChooseRefusal.Roll;
            }

            if (front.Braking[k] + rear.Braking[k] - behind.Braking[k] > (1.0 + asked.Limits.Braking) * before.Braking[k])
            {
                return ChooseRefusal.Braking;
            }
        }

        return asked.Car.Headlamp is not null && Swing(front, rear) > asked.Limits.MostSwing(swing) ? ChooseRefusal.LampSwing : ChooseRefusal.None;
    }

    private double Swing(AxleStand front, AxleStand rear)
    {
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var k = 0; k < gravity.Length; k++)
        {
            var pitch = front.Pitch[k] + rear.Pitch[k] - stands[0][0]!.Pitch[k];
            (least, most) = (Math.Min(least, pitch), Math.Max(most, pitch));
        }

        return most - least;
    }

    private int[] At(AxleEnd end) => [.. Enumerable.Range(0, parts.Places.Length).Where(k => parts.Places[k].End() == end)];

    private int Options(int place) => parts.Space.Places[place].Options.Length;

    private int Index(long setup, int end)
    {
        var (own, weight, index) = (places[end], weights[end], 0L);
        for (var k = 0; k < own.Length; k++)
        {
            index += weight[k] * parts.Space.OptionAt(setup, own[k]);
        }

        return (int)index;
    }

    // Everything that can stand at an end, the other end as it is. Dampers of one gas force stand alike.
    private AxleStand?[] Stands(int[] own, bool isFront, int degree)
    {
        var count = own.Aggregate(1, (n, place) => n * Options(place));
        var setups = new long[count];
        for (var index = 0; index < count; index++)
        {
            var (setup, left) = (0L, (long)index);
            for (var k = own.Length - 1; k >= 0; k--)
            {
                setup = parts.Space.With(setup, own[k], (int)(left % Options(own[k])));
                left /= Options(own[k]);
            }

            setups[index] = setup;
        }

        var fits = new Fitted?[count];
        ParallelLoop.Each(count, degree, index => fits[index] = parts.Fit(setups[index]) as Fitted, CancellationToken.None);
        var alike = new Dictionary<string, int>(StringComparer.Ordinal);
        var first = new int[count];
        for (var index = 0; index < count; index++)
        {
            var key = string.Join(',', own.Select(place => parts.Places[place].Sort() == PartSort.Damper
                ? parts.OptionOf(place, parts.Space.OptionAt(setups[index], place))?.GasForce?.Si.ToString("R", null) ?? "as it is"
                : parts.Space.OptionAt(setups[index], place).ToString(System.Globalization.CultureInfo.InvariantCulture)));
            first[index] = fits[index] is null ? -1 : alike.TryGetValue(key, out var known) ? known : alike[key] = index;
        }

        var stood = new AxleStand?[count];
        ParallelLoop.Each(
            count, degree, index => stood[index] = first[index] == index ? Stand(fits[index]!.Car, isFront) : null, CancellationToken.None);
        return [.. first.Select(index => index < 0 ? null : stood[index])];
    }

    private AxleStand? Stand(Car car, bool isFront)
    {
        try
        {
            SideEffects[] effects = [.. asked.Loads.Select(load => SideEffects.Of(RideModel.Of(car, load)))];
            return new AxleStand(
                [.. effects.Select(e => e.Roll is { FrontShareWithTyres: var share } roll ? roll.WithTyres * (isFront ? share : 1.0 - share) : 0.0)],
                [.. effects.Select(e => e.Braking.Angle)],
                [.. effects.Select(e => e.Headlamp?.Drop ?? 0.0)]);
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }

    /// <summary>How a car stands with other parts at one end, load by load.</summary>
    /// <param name="Roll">Roll stiffness of that end, tyres in series, N m/rad.</param>
    /// <param name="Braking">Pitch of the body in braking per acceleration.</param>
    /// <param name="Pitch">Drop of the beam per distance (–).</param>
    private sealed record AxleStand(double[] Roll, double[] Braking, double[] Pitch);
}
