"""At the cutting table: one cut after the other, and what to do when one goes wrong.

In reading order: `cuts` (the steps, one cut at a time), `order` (the cut order of
one cloth from a moment on), `progress` (what lies on the table after so many
cuts), `miscut` (what lies there when something went wrong), `remaining` (the rest
laid again on what is left), `cutting` (all cloths, and how far each is cut),
`changed` (a changed plan on what is left),
`words` (a cut in words), `kept` (all of it as a file of its own).
"""
