using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>
/// Makes a record and turns its refusals into refusals at the keys. A record stops at its first bad value; to find the others at once, the
/// bad one is replaced by its key's example and the record is tried again. Only limits that look at one value alone (above 0, finite) are
/// told then: one that compares values would compare with the example.
/// </summary>
internal sealed class RecordTrial<T>(Node node, Shape shape, Reader reader, Func<Fields, T?> make)
    where T : class
{
    private readonly HashSet<Key> replaced = [];

    /// <summary>The record, or null with the refusals at the reader.</summary>
    /// <param name="values">The sound values. Those of refused keys are replaced by examples.</param>
    /// <param name="isSound">Whether no key was refused so far.</param>
    public T? Make(Dictionary<Key, object> values, bool isSound)
    {
        if (!isSound && !FillIn(values))
        {
            return null;
        }

        for (var round = 0; round <= shape.Keys.Count; round++)
        {
            try
            {
                // A trial with examples in it must not speak: its own reader is thrown away.
                var record = make(new Fields(node, shape, isSound ? reader : new Reader(reader.Source), values));
                return isSound ? record : null;
            }
            catch (RefusedValueException refused)
            {
                var key = shape.Keys.FirstOrDefault(key => key.Property == refused.Property);
                if (isSound || (IsAboutOneValue(refused) && (key is null || !replaced.Contains(key))))
                {
                    Tell(refused, key);
                }

                isSound = false;
                if (key is null || !values.ContainsKey(key) || !replaced.Add(key) || key.Sample() is not { } sample)
                {
                    return null;
                }

                values[key] = sample;
            }
        }

        return null;
    }

    // Keys that are given but refused, and required keys that are missing.
    private bool FillIn(Dictionary<Key, object> values)
    {
        foreach (var key in shape.Keys.Where(key => !values.ContainsKey(key) && (key.IsRequired || node.At(key.Name) is not null)))
        {
            if (key.Sample() is not { } sample)
            {
                return false;
            }

            values[key] = sample;
            replaced.Add(key);
        }

        // Alternatives that are missing or one too many make no record.
        return shape.OneOf.All(set => set.Count(values.ContainsKey) == 1);
    }

    private void Tell(RefusedValueException refused, Key? key)
    {
        var value = key is null ? null : node.At(key.Name);
        if (key is null || value is null)
        {
            var subject = $"{node.Path} {refused.What}".TrimStart();
            reader.Refuse(node.Place, subject, refused.Value, ValueLimit.Of(refused), refused.Advice);
            return;
        }

        var given = value.Kind == NodeKind.Scalar ? value.Text : refused.Value;
        reader.Refuse(value.Place, value.Subject, given, key.Kind.Restate(refused, given), refused.Advice);
    }

    // A closed range may end at another value.
    private static bool IsAboutOneValue(RefusedValueException refused) => refused.Least is not null && (refused.Most is null || refused.IsOpenBelow);
}
