namespace Heaveline.Studies;

/// <summary>A speed that was given without the road that it would be driven over.</summary>
internal static class IdleSpeed
{
    /// <summary>Objects to it.</summary>
    /// <param name="reader">The words.</param>
    /// <param name="speed">The choice of the speed.</param>
    /// <param name="road">The choice of the road.</param>
    public static void Object(AskedReader reader, Choice speed, Choice road)
    {
        if (reader.Given.Of(speed) is { } typed && typed != speed.Usual && reader.Given.Of(road) is null)
        {
            reader.Object(speed.Name, $"{speed.Name} does nothing without a road: give --{road.Name}, or leave --{speed.Name} out.");
        }
    }
}
