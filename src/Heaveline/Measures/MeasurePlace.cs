namespace Heaveline.Measures;

/// <summary>Where batches of passes run: on a device where one was chosen and it is worth while, else on this processor.</summary>
internal static class MeasurePlace
{
    private static readonly HashSet<string> Said = [];

    /// <summary>The device that was chosen for this process; null: the processor.</summary>
    public static IMeasureDevice? Device { get; set; }

    /// <summary>Is told, each reason once, why passes were left to the processor.</summary>
    public static Action<string>? Word { get; set; }

    /// <summary>Tells why.</summary>
    public static void Say(IEnumerable<string> reasons)
    {
        foreach (var reason in reasons)
        {
            lock (Said)
            {
                if (!Said.Add(reason))
                {
                    continue;
                }
            }

            Word?.Invoke(reason);
        }
    }
}
