using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Cars;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>A table of force against travel or velocity, every bad row refused at its own place.</summary>
/// <typeparam name="TAt">Travel or velocity.</typeparam>
/// <param name="throughZero">Whether the table begins at (0, 0), which need not be written; else it needs two rows.</param>
/// <param name="usualAt">What the travels or velocities usually are, from and to.</param>
/// <param name="usualForce">What the forces usually are, from and to.</param>
internal sealed class ForceTableKind<TAt>(bool throughZero, (string From, string To) usualAt, (string From, string To) usualForce) : Kind<ForceTable>
    where TAt : struct, IDimension
{
    private readonly Kind<IReadOnlyList<(Amount<TAt> At, Amount<Force> Force)>> rows = List(
        Pair(Amount<TAt>().Usually(usualAt.From, usualAt.To), Amount<Force>().Usually(usualForce.From, usualForce.To)), throughZero ? 1 : 2);

    /// <inheritdoc/>
    public override string Words => $"a table, each row [{(typeof(TAt) == typeof(Velocity) ? "velocity" : "travel")}, force]";

    /// <inheritdoc/>
    internal override string? UsualWords => rows.UsualWords;

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out ForceTable value)
    {
        value = null;
        if (!rows.TryRead(node, reader, out var read))
        {
            return false;
        }

        var before = reader.Count;
        var list = read.ToList();
        RefuseDoubts(node, list, reader);
        if (throughZero)
        {
            for (var i = 0; i < list.Count; i++)
            {
                RefuseBelowZero(node.Items[i], list[i], reader);
            }

            if (list[0].At.Si != 0.0)
            {
                list.Insert(0, default);
            }
        }

        var skipped = list.Count - node.Items.Count;
        for (var i = 1; i < list.Count; i++)
        {
            RefuseFalling(node.Items, i - skipped, list[i - 1], list[i], reader);
        }

        if (reader.Count > before)
        {
            return false;
        }

        if (list.Count < 2)
        {
            return reader.Fail(
                node.Place,
                $"{node.Subject} has only a row of zeros; it must have one with a force.",
                "Add the measured rows; the row of zeros need not be written.",
                out value);
        }

        value = new ForceTable([.. list.Select(row => row.At.Si)], [.. list.Select(row => row.Force.Si)]);
        return true;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => rows.Describe(field);

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => rows.Schema(definitions);

    // A doubt that nothing follows must not look as if it counted.
    private static void RefuseDoubts(Node node, List<(Amount<TAt> At, Amount<Force> Force)> list, Reader reader)
    {
        var row = list.FindIndex(r => r.At.Doubt.IsStated || r.Force.Doubt.IsStated);
        if (row >= 0)
        {
            var cell = node.Items[row].Items[list[row].Force.Doubt.IsStated ? 1 : 0];
            reader.Refuse(
                cell.Place,
                $"{node.Items[row].Subject} has a doubt of its own ({cell.Text}).",
                "Give the table one doubt in a key beside it: table-doubt: ± 5 %. A rig's error puts all forces off together.");
        }
    }

    private static void RefuseBelowZero(Node row, (Amount<TAt> At, Amount<Force> Force) values, Reader reader)
    {
        const string Advice = "Write both columns as positive numbers, for rebound too; the key says which way.";
        if (!(values.At.Si >= 0.0))
        {
            reader.Refuse(row.Items[0].Place, $"{row.Subject} begins with {row.Items[0].Text}; it must be 0 {TAt.Symbol} or above.", Advice);
        }

        if (!(values.Force.Si >= 0.0))
        {
            reader.Refuse(row.Items[1].Place, $"{row.Subject} has a force of {row.Items[1].Text}; it must be 0 N or above.", Advice);
        }
        else if (values.At.Si == 0.0 && values.Force.Si != 0.0)
        {
            reader.Refuse(
                row.Items[1].Place,
                $"{row.Subject} has a force of {row.Items[1].Text} at 0; it must be 0 N there.",
                "Take off what it carries at rest: gas force and preload have keys of their own.");
        }
    }

    private static void RefuseFalling(
        IReadOnlyList<Node> items, int i, (Amount<TAt> At, Amount<Force> Force) last, (Amount<TAt> At, Amount<Force> Force) next, Reader reader)
    {
        if (i == 0)
        {
            // The row of zeros before it is not written; what falls below zero is refused already.
            return;
        }

        if (!(next.At.Si > last.At.Si))
        {
            reader.Refuse(
                items[i].Items[0].Place,
                $"{items[i].Subject} begins with {items[i].Items[0].Text}; it must be above the {items[i - 1].Items[0].Text} of the row before.",
                "Sort the rows and drop repeated ones.");
        }
        else if (next.Force.Si < last.Force.Si)
        {
            reader.Refuse(
                items[i].Items[1].Place,
                $"{items[i].Subject} has a force of {items[i].Items[1].Text}; it must be at least the "
                + $"{items[i - 1].Items[1].Text} of the row before.",
                "A falling force is a misreading, or a reading past the end of the range.");
        }
    }
}
