// The map of the page. Names from files are shown as text nodes only.
(function () {
  'use strict';
  var data = JSON.parse(document.getElementById('map-data').textContent);
  var box = document.getElementById('course-map');
  var still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  var looks = {};
  data.looks.forEach(function (look) { looks[look.n] = look; });

  var map = L.map(box, {
    crs: L.CRS.Simple, attributionControl: false, minZoom: -4, maxZoom: 7, zoomSnap: 0.25,
    scrollWheelZoom: false, zoomControl: false, zoomAnimation: !still, fadeAnimation: !still
  });
  map.on('focus', function () { map.scrollWheelZoom.enable(); });
  map.on('blur', function () { map.scrollWheelZoom.disable(); });
  L.control.zoom({ position: 'bottomright' }).addTo(map);
  L.control.scale({ imperial: false, maxWidth: 140 }).addTo(map);
  [['aerial', 210], ['ground', 300], ['outlines', 350], ['letters', 380], ['patches', 420]].forEach(function (p) {
    map.createPane(p[0]).style.zIndex = p[1];
  });
  map.getPane('letters').style.pointerEvents = 'none';

  var groups = {};
  function group(name) {
    if (!groups[name]) { groups[name] = L.layerGroup(); }
    return groups[name];
  }

  function element(tag, text, cls) {
    var e = document.createElement(tag);
    if (text !== undefined) { e.textContent = text; }
    if (cls) { e.className = cls; }
    return e;
  }

  function title(green) {
    return 'Green ' + green.id + (green.name ? ', ' + green.name : '');
  }

  function icon(cls, text, size) {
    return L.divIcon({ className: 'mark ' + cls, html: element('span', text), iconSize: [size, size] });
  }

  // a path can be reached and opened by key, and says what it is
  function reachable(layer, words) {
    layer.on('add', function () {
      var e = layer.getElement();
      if (!e) { return; }
      e.setAttribute('tabindex', '0');
      e.setAttribute('role', 'button');
      e.setAttribute('aria-label', words);
      e.onkeydown = function (event) {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          layer.openPopup();
          focusPopup(layer);
        }
      };
    });
  }

  var opener = null;

  function focusPopup(layer) {
    opener = document.activeElement;
    var e = layer.getPopup() && layer.getPopup().getElement();
    var close = e && e.querySelector('.leaflet-popup-close-button');
    if (close) { close.focus({ preventScroll: true }); }
  }

  document.addEventListener('keydown', function (event) {
    if (event.key !== 'Escape') { return; }
    map.closePopup();
    if (opener && document.contains(opener)) { opener.focus({ preventScroll: true }); }
    opener = null;
  });

  function figures(green, patch) {
    var e = element('div', undefined, 'figures-pop');
    e.appendChild(element('strong', title(green)));
    e.appendChild(element('p', patch.title));
    var list = element('dl');
    patch.rows.forEach(function (row) {
      list.appendChild(element('dt', row[0]));
      list.appendChild(element('dd', row[1]));
    });
    e.appendChild(list);
    var link = element('a', 'To its sheet');
    link.href = '#' + green.sheet;
    e.appendChild(link);
    return e;
  }

  function words(text) { return element('span', text); }

  function marker(at, cls, text, size, label, name) {
    L.marker(at, { icon: icon(cls, text, size), title: label, alt: label, keyboard: true })
      .bindPopup(words(label)).addTo(group(name));
  }

  function draw(green) {
    var plain = { pane: 'outlines', color: '#111', weight: 1.5, fill: false, interactive: false };
    L.polygon(green.outline, plain).addTo(group('outlines'));
    if (green.noMap) {
      var none = L.polygon(green.outline, { pane: 'outlines', stroke: false, fillColor: '#fff', fillOpacity: 0.8 });
      none.bindPopup(words(title(green) + ': no map, ' + green.noMap)).addTo(group('outlines'));
      reachable(none, title(green) + ': no map');
    }
    (green.classes || []).forEach(function (zone) {
      var look = looks[zone.n];
      L.polygon(zone.shape, { pane: 'ground', color: '#555', weight: 0.7, fillColor: look.paint, fillOpacity: 1 })
        .bindTooltip(words(look.letter + ', ' + look.code + ': ' + zone.area + ' m²'), { sticky: true })
        .addTo(group('classes'));
      zone.letters.forEach(function (at) {
        L.marker(at, { pane: 'letters', icon: icon('letter-mark', look.letter, 20), interactive: false, keyboard: false, alt: '' })
          .addTo(group('classes'));
      });
    });
    ['mean', 'sd'].forEach(function (name) {
      if (green[name]) {
        L.imageOverlay(green[name].uri, green[name].box, {
          pane: 'ground', className: 'cells',
          alt: title(green) + (name === 'mean' ? ': moisture' : ': standard deviation')
        }).addTo(group(name));
      }
    });
    (green.patches || []).forEach(function (patch) {
      var shape = L.polygon(patch.shape, { pane: 'patches', color: '#111', weight: 2.5, dashArray: '7 4', fillColor: '#fff', fillOpacity: 0.01, className: 'patch' });
      shape.bindPopup(figures(green, patch), { maxWidth: 300, minWidth: 240, autoPanPadding: [10, 10] }).addTo(group('patches'));
      reachable(shape, title(green) + ', ' + patch.title);
      patch.layer = shape;
    });
    (green.spots || []).forEach(function (spot) {
      marker(spot.at, 'spot-mark', spot.kind === 'wet' ? '▽' : '△', 22, spot.words, 'patches');
    });
    green.stations.forEach(function (s) {
      L.circleMarker(s.at, { pane: 'patches', radius: 3.5, color: '#fff', weight: 1, fillColor: '#111', fillOpacity: 1, className: 'station' })
        .bindTooltip(words(s.words)).addTo(group('stations'));
    });
    (green.next || []).forEach(function (s) { marker(s.at, 'next-mark', s.n, 24, s.words, 'next'); });
    (green.stops || []).forEach(function (s) { marker(s.at, 'stop-mark', s.n, 24, s.words, 'stops'); });
    L.marker(L.polygon(green.outline).getBounds().getCenter(), { icon: icon('name-mark', green.id, 10), interactive: false, keyboard: false, alt: '' })
      .addTo(group('names'));
  }

  data.images.forEach(function (image) {
    L.imageOverlay(image.uri, image.box, { pane: 'aerial', alt: 'aerial image ' + image.name }).addTo(group('aerial'));
  });
  document.getElementById('aerial-label').hidden = data.images.length === 0;

  var form = document.getElementById('switches');
  var pickGreen = document.getElementById('pick-green');
  var pickSurvey = document.getElementById('pick-survey');
  var shown = [];

  function option(select, value, text) {
    var o = element('option', text);
    o.value = value;
    select.appendChild(o);
  }

  var surveys = data.greens.map(function (g) { return g.survey; }).filter(function (s, i, all) { return all.indexOf(s) === i; });
  option(pickSurvey, '', 'the last of each green');
  surveys.forEach(function (s, i) { option(pickSurvey, String(i), s || 'not named'); });
  document.getElementById('survey-label').hidden = surveys.length < 2;

  function chosen() {
    if (pickSurvey.value !== '') {
      return data.greens.filter(function (g) { return g.survey === surveys[Number(pickSurvey.value)]; });
    }
    var last = {};
    data.greens.forEach(function (g) { last['g' + g.id] = g; });
    return Object.keys(last).map(function (k) { return last[k]; });
  }

  function rebuild() {
    var kept = pickGreen.value;
    Object.keys(groups).forEach(function (name) {
      if (name !== 'aerial') { groups[name].clearLayers(); }
    });
    shown = chosen();
    shown.forEach(draw);
    pickGreen.textContent = '';
    option(pickGreen, '', 'all greens');
    shown.forEach(function (g, i) { option(pickGreen, String(i), title(g)); });
    pickGreen.value = kept && Number(kept) < shown.length ? kept : '';
    list();
    apply();
  }

  function list() {
    var out = document.getElementById('patch-list');
    out.textContent = '';
    var all = element('div', undefined, 'patch-buttons');
    shown.forEach(function (green, i) {
      (green.patches || []).forEach(function (patch) {
        var b = element('button');
        b.type = 'button';
        b.appendChild(element('bdi', green.id));
        b.appendChild(document.createTextNode(' ' + patch.title.toLowerCase()));
        b.onclick = function () {
          tick('patches');
          pickGreen.value = String(i);
          fit(false);
          patch.layer.openPopup(patch.at);
          focusPopup(patch.layer);
        };
        all.appendChild(b);
      });
    });
    if (all.childNodes.length > 0) { out.appendChild(element('p', 'Patches, to open on the map:')); }
    out.appendChild(all);
  }

  function tick(name) {
    form.querySelector('input[value=' + name + ']').checked = true;
    apply();
  }

  function on(name, wanted) {
    if (wanted) { group(name).addTo(map); } else { group(name).remove(); }
  }

  function apply() {
    var ground = form.querySelector('input[name=ground]:checked').value;
    ['classes', 'mean', 'sd'].forEach(function (name) { on(name, name === ground); });
    ['patches', 'stations', 'next', 'stops', 'aerial'].forEach(function (name) {
      on(name, form.querySelector('input[value=' + name + ']').checked);
    });
    on('outlines', true);
    on('names', pickGreen.value === '');
    var over = data.images.length > 0 && form.querySelector('input[value=aerial]').checked;
    map.getPane('ground').style.opacity = over ? 0.65 : 1;
    legend(ground);
  }

  // no map without its date, n and SD
  function told() {
    var g = pickGreen.value === '' ? null : shown[Number(pickGreen.value)];
    document.getElementById('told').textContent = !g
      ? shown.length + ' greens, each with its date, n and SD on its sheet.'
      : title(g) + (g.survey ? ', ' + g.survey : '') + (g.date ? ', ' + g.date : ', date not recorded') +
        '; ' + g.stations.length + ' stations (n)' +
        (g.medianSd ? '; SD of the map ' + g.medianSd + ' % by volume' : g.noMap ? '; no map: ' + g.noMap : '; SD not known') + '.';
  }

  function legend(ground) {
    told();
    var out = document.getElementById('legend');
    out.textContent = '';
    if (ground === 'classes') {
      var used = {};
      shown.forEach(function (g) { (g.classes || []).forEach(function (z) { used[z.n] = true; }); });
      data.looks.forEach(function (look) {
        if (!used[look.n]) { return; }
        var key = element('span', undefined, 'key');
        key.appendChild(swatch(look.paint, look.letter));
        key.appendChild(document.createTextNode(' ' + look.code));
        out.appendChild(key);
      });
      if (!out.firstChild) { out.appendChild(words('No band was given, so there are no classes.')); }
    } else if (ground !== 'none') {
      var scale = ground === 'mean' ? data.moisture : data.doubt;
      out.appendChild(words(scale.low + ' '));
      scale.colours.forEach(function (c) { out.appendChild(swatch(c, '')); });
      out.appendChild(words(' ' + scale.high + (ground === 'mean' ? ' % by volume' : ' % by volume, SD: the darker the less sure')));
    }
  }

  function swatch(paint, letter) {
    var ns = document.querySelector('svg').namespaceURI;
    var svg = document.createElementNS(ns, 'svg');
    svg.setAttribute('width', letter ? 26 : 18);
    svg.setAttribute('height', 16);
    svg.setAttribute('aria-hidden', 'true');
    var rect = document.createElementNS(ns, 'rect');
    rect.setAttribute('width', letter ? 26 : 18);
    rect.setAttribute('height', 16);
    rect.setAttribute('fill', paint);
    rect.setAttribute('stroke', '#444');
    svg.appendChild(rect);
    if (letter) {
      var text = document.createElementNS(ns, 'text');
      text.setAttribute('class', 'letter');
      text.setAttribute('x', 13);
      text.setAttribute('y', 12);
      text.setAttribute('font-size', 11);
      text.textContent = letter;
      svg.appendChild(text);
    }
    return svg;
  }

  function fit(animate) {
    var greens = pickGreen.value === '' ? shown : [shown[Number(pickGreen.value)]];
    var bounds = L.latLngBounds([]);
    greens.forEach(function (g) { bounds.extend(L.polygon(g.outline).getBounds()); });
    map.fitBounds(bounds, { padding: [24, 24], animate: animate && !still });
  }

  form.addEventListener('submit', function (event) { event.preventDefault(); });
  form.addEventListener('change', function (event) {
    if (event.target === pickSurvey) { rebuild(); fit(false); return; }
    apply();
    if (event.target === pickGreen) { fit(true); }
  });

  map.setView([0, 0], 0);
  rebuild();
  var first = shown.findIndex(function (g) { return g.patches && g.patches.length > 0; });
  pickGreen.value = shown.length > 0 ? String(Math.max(0, first)) : '';
  apply();
  fit(false);
  if (shown.every(function (g) { return !g.classes || g.classes.length === 0; })) {
    form.querySelector('input[value=mean]').checked = true;
    apply();
  }
  document.documentElement.dataset.map = 'ready';
})();
