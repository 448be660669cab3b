namespace Heaveline.Measures;

/// <summary>Where batches of passes run: on a device where one was chosen, is there and is worth while, else on this processor.</summary>
internal static class MeasurePlace
{
    private static readonly HashSet<string> Said = [];
    private static Lazy<IMeasureDevice?> found = new((IMeasureDevice?)null);
    private static Action<string> tell = _ => { };
    private static int least = int.MaxValue;

    /// <summary>Chooses for this process. A device is looked for when it is first needed.</summary>
    /// <param name="fewest">Fewest passes for which it is worth while.</param>
    /// <param name="word">Is told, each reason once, why passes were left to the processor.</param>
    /// <param name="find">Finds the device, or none.</param>
    public static void Choose(int fewest, Action<string> word, Func<IMeasureDevice?> find)
    {
        (least, tell, found) = (fewest, word, new(find));
        lock (Said)
        {
            Said.Clear();
        }
    }

    /// <summary>The processor alone, as at first.</summary>
    public static void ChooseProcessor() => Choose(int.MaxValue, _ => { }, () => null);

    /// <summary>The device for so many passes; null: the processor.</summary>
    public static IMeasureDevice? For(int passes) => passes >= least ? found.Value : null;

    /// <summary>Tells why passes were left to the processor.</summary>
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

            tell(reason);
        }
    }
}
