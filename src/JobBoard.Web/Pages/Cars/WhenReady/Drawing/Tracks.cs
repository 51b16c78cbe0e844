namespace JobBoard.Web.Pages.Cars.WhenReady.Drawing;

/// <summary>
/// Which row each rib lies on: above the line 1, 2, ... and under it -1, -2, ... No two lines ever cross.
/// </summary>
/// <remarks>
/// Ribs are taken in the order in which they join, each with all that joins it before the next. A rib takes the lowest row,
/// counted from what it joins outwards, on which its whole stretch is free of ribs and of ways across laid before. What was
/// laid before joined before, so it ends before this rib goes across, and what is laid later lies further out or beside: the
/// ways across cross nothing.
/// </remarks>
internal sealed class Tracks
{
    private readonly RibTree _tree;
    private readonly Moments _moments;
    private readonly ILookup<int, int> _into;
    private readonly Rows _above = new();
    private readonly Rows _under = new();

    public Tracks(RibTree tree, Moments moments)
    {
        (_tree, _moments) = (tree, moments);
        Of = new int[tree.Ribs.Length];
        var row = new int[tree.Nodes.Length];
        for (var r = 0; r < tree.Ribs.Length; r++)
        {
            foreach (var step in tree.Ribs[r].Steps) row[step] = r;
        }

        _into = Enumerable.Range(0, tree.Ribs.Length).ToLookup(r => tree.Ribs[r].Joins is var j && j != RibTree.End && !tree.IsOnLine(j) ? row[j] : -1);
        foreach (var rib in InOrder(-1)) Lay(rib, 0, null);
        OfNode = [.. Enumerable.Range(0, tree.Nodes.Length).Select(n => tree.IsOnLine(n) ? 0 : Of[row[n]])];
    }

    /// <summary>By rib.</summary>
    public int[] Of { get; }

    /// <summary>By step; 0 for the line.</summary>
    public int[] OfNode { get; }

    private IEnumerable<int> InOrder(int into) => _into[into].OrderBy(r => _moments.Joints[r]).ThenByDescending(r => _moments.Starts[_tree.Ribs[r].First]);

    private void Lay(int rib, int from, Rows? side)
    {
        var (start, joint) = (_moments.Starts[_tree.Ribs[rib].First], _moments.Joints[rib]);
        side ??= _above.Free(1, start, joint) <= _under.Free(1, start, joint) ? _above : _under;
        var row = side.Free(from + 1, start, joint);
        side.Take(row, start, joint);
        for (var between = from + 1; between < row; between++) side.Take(between, joint, joint);
        Of[rib] = side == _above ? row : -row;
        foreach (var inner in InOrder(rib)) Lay(inner, row, side);
    }

    /// <summary>One side of the line: what is taken on each row, as stretches of the order.</summary>
    private sealed class Rows
    {
        private readonly List<List<(int From, int To)>> _taken = [];

        public int Free(int least, int from, int to)
        {
            var row = least;
            while (row < _taken.Count && _taken[row].Any(t => t.From <= to && from <= t.To)) row++;
            return row;
        }

        public void Take(int row, int from, int to)
        {
            while (_taken.Count <= row) _taken.Add([]);
            _taken[row].Add((from, to));
        }
    }
}
