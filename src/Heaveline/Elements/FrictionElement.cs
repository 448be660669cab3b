namespace Heaveline.Elements;

/// <summary>Dry friction of a corner, at the wheel.</summary>
internal static class FrictionElement
{
    /// <summary>The friction; null without any.</summary>
    /// <param name="place">Where it acts.</param>
    /// <param name="like">That of the axle's other wheel, which is as strong; null for none.</param>
    public static Element? Of(CornerPlace place, Element? like = null)
    {
        var friction = place.Axle.Friction;
        return friction.HalfWidth.Si > 0.0
            ? new Element
            {
                Name = "friction",
                Cause = StepCause.Friction,
                Corner = place.Corner,
                Sight = Sight.Along(place.Corner),
                Slider = like?.Slider ?? new Slider(place.Half * friction.HalfWidth.Si, friction.PreSliding.Si, friction.SpeedScale.Si),
                Felt = place.FeltByOwn(),
            }
            : null;
    }
}
